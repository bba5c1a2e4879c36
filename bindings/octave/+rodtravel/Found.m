% SPDX-License-Identifier: Apache-2.0
% What the library found: not changed, and == compares it by value. A member is read by its name: finding.margin
classdef Found
  properties (SetAccess = private)
    type
    kind
    core
    text
  end
  methods
    function self = Found(type, kind, core)
      self.type = type;
      self.kind = kind;
      self.core = core;
      self.text = rodtravel.core.call([type, "_json"], core);
    end

    function kind = kind_of(self)
      kind = self.kind;
    end

    function type = type_of(self)
      type = self.type;
    end

    function core = core_of(self)
      core = self.core;
    end

    function text = char(self)
      switch self.kind
        case {"finding", "vehicle", "air_finding", "count"}
          text = rodtravel.core.call([self.type, "_say"], self.core);
        case "rules"
          text = rodtravel.core.call("Rules_id", self.core);
        otherwise
          text = self.text;
      end
    end

    function disp(self)
      printf("%s\n", char(self));
    end

    function same = eq(a, b)
      same = isa(a, "rodtravel.Found") && isa(b, "rodtravel.Found") && strcmp(a.kind, b.kind) && strcmp(a.text, b.text);
    end

    function same = ne(a, b)
      same = !eq(a, b);
    end

    function same = isequal(a, b)
      same = eq(a, b);
    end

    function varargout = subsref(self, index)
      if !strcmp(index(1).type, ".")
        rodtravel.core.refuse("what was found is one value");
      end
      varargout{1} = rodtravel.core.member(self.kind, self.type, self.core, index(1).subs);
      if numel(index) > 1
        varargout{1} = subsref(varargout{1}, index(2:end));
      end
    end

    function self = subsasgn(self, index, value)
      rodtravel.core.refuse("what was found is not changed");
    end
  end
end
