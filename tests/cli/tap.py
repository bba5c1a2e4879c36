# SPDX-License-Identifier: Apache-2.0
"""Runs the unittest cases of a module and tells of them in the Test Anything Protocol."""
import signal
import sys
import unittest


class Tap(unittest.TestResult):
    def say(self, good, test, why=""):
        print("ok" if good else "not ok", self.testsRun, "-", test.id().removeprefix("__main__."))
        self.tell(why)

    @staticmethod
    def tell(why):
        for text in why.splitlines():
            print("#", text)

    def startTest(self, test):
        super().startTest(test)
        self.failed_parts = False

    def addSuccess(self, test):
        self.say(not self.failed_parts, test)

    def addSkip(self, test, reason):
        super().addSkip(test, reason)
        print("ok", self.testsRun, "-", test.id().removeprefix("__main__."), "# SKIP", reason)

    def addFailure(self, test, err):
        super().addFailure(test, err)
        self.failed_parts = False
        self.say(False, test, self.failures[-1][1])

    def addError(self, test, err):
        super().addError(test, err)
        self.failed_parts = False
        self.say(False, test, self.errors[-1][1])

    def addSubTest(self, test, subtest, err):
        super().addSubTest(test, subtest, err)
        if err is not None:
            self.failed_parts = True
            self.tell(f"{subtest}\n{self._exc_info_to_string(err, test)}")

    def stopTest(self, test):
        # A test whose parts failed is told of by nobody else.
        if self.failed_parts:
            self.say(False, test)
        super().stopTest(test)


def main(module="__main__"):
    """Ends the program: 0 only if there are tests and every one passed."""
    # A shell that runs the tests in the background ignores interrupts for all its children.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules[module])
    print(f"1..{suite.countTestCases()}")
    result = suite.run(Tap())
    sys.exit(not result.wasSuccessful() or result.testsRun == 0)
