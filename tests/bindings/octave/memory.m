% SPDX-License-Identifier: Apache-2.0
% A million calls of the library lose nothing, whether they find or refuse. Prints TAP.
1;

function pages = pages()
  pages = 0;
  if exist("/proc/self/statm", "file")
    pages = sscanf(fileread("/proc/self/statm"), "%d")(2);
  end
end

function work(times) % some fifty calls each
  for i = 1:times
    yard = rodtravel.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard");
    found = rodtravel.judge("chamber", "30L", "released", "2 3/4", "applied", "5 1/4", "rules", yard);
    rodtravel.sentences(found, "fr");
    rodtravel.judge_vehicle({struct("position", "1L", "finding", found)});
    rodtravel.judge_columns("chamber", {"30L"}, "released", {"2 3/4"}, "applied", {"5 1/4"}, "rules", yard);
    for wrong = {"2-Jan", "", "4 1/"}
      try
        rodtravel.judge("chamber", "30", "released", "2 1/8", "applied", wrong{1});
        puts("not ok 2 - it was not refused\n");
      catch
      end
    end
  end
end

puts("1..1\n");
work(2000);
before = pages();
work(20000);
more = pages() - before;
printf("%sok 1 - memory after a million calls # %d pages more\n", "not "(1:4 * (more >= 300)), more);
