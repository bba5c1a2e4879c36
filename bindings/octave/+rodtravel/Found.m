% SPDX-License-Identifier: Apache-2.0
% What the library found: not changed, and == compares it by value. A member is read by its name: finding.margin
classdef Found
  properties (SetAccess = private)
    type
    kind
    core
  end
  methods
    function self = Found(type, kind, core)
      self.type = type;
      self.kind = kind;
      self.core = core;
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
          text = rodtravel.core.call([self.type, "_json"], self.core);
      end
    end

    function disp(self)
      printf("%s\n", char(self));
    end

    function same = eq(a, b)
      same = isa(a, "rodtravel.Found") && isa(b, "rodtravel.Found") && strcmp(a.kind, b.kind) ...
             && strcmp(rodtravel.json(a), rodtravel.json(b));
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
        % Octave would take the first of a list of values and drop the rest.
        if strcmp(index(2).type, "{}") && numel(varargout{1}(index(2).subs{:})) != 1
          rodtravel.core.refuse("one value at a time is taken from a member; for all: reasons = finding.reasons");
        end
        varargout{1} = subsref(varargout{1}, index(2:end));
      end
    end

    function self = subsasgn(self, index, value)
      rodtravel.core.refuse("what was found is not changed");
    end
  end
end
