// SPDX-License-Identifier: Apache-2.0
import java.io.PrintStream;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import rodtravel.*;

/** What the package finds and refuses. Prints TAP. */
class Test {
    static int count = 0;
    static boolean failed = false;

    static void ok(boolean right, String what) {
        failed |= !right;
        System.out.println((right ? "ok " : "not ok ") + ++count + " - " + what);
    }

    static void is(Object found, Object wanted, String what) {
        ok(Objects.equals(found, wanted), what);
        if (!Objects.equals(found, wanted))
            System.out.println("# found " + found + ", wanted " + wanted);
    }

    /** Status, field, column and line of what a call must refuse. */
    static void refused(String wanted, Runnable call) {
        String found = "nothing";
        try {
            call.run();
        } catch (RodtravelException error) {
            found = error.status() + " " + (error.field().isEmpty() ? "-" : error.field()) + " " + error.column() + " "
                    + error.line();
        }
        is(found, wanted, "refused: " + wanted);
    }

    static Form form() {
        return new Form().chamber("30L").released("2 3/4").applied("5 5/16").psi(95);
    }

    static Optional<Ratio> ratio(long num, long den) {
        return Optional.of(Ratio.of(num, den));
    }

    static void wheelEnd() {
        Finding over = form().judge();
        is(over.verdict(), Verdict.OUT_OF_ADJUSTMENT, "the verdict");
        is(over.verdict().toString() + over.verdict().text().isEmpty(), "out-of-adjustmentfalse", "as a word");
        is(over.margin(), ratio(-1, 16), "the margin is exact");
        is(List.of(over.appliedStroke(), over.limit()), List.of(ratio(41, 16), ratio(5, 2)), "stroke and limit");
        is(over.reasons(), List.of(Reason.OVER_LIMIT), "reasons");
        is(over.toString(), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text");
        is(over.longLimit(), Optional.empty(), "what is not given is empty");
        is(over.defect(), Defect.HALF, "the defect");
        ok(over.source().get().startsWith("49 CFR Part 393, 393.47"), "the source");
        is(over.get("law_row.published"), "2 1/2", "a member by its path");
        is(List.of(over.chamber(), over.rules()), List.of("clamp 30 long", "us-fmcsr"), "texts");
        ok(over.sentences("fr").get(0).contains("dépasse la limite"), "a reason in French");
        is(over.sentences().size(), 1, "a sentence for each reason");
        ok(over.sentence("es").contains("límite"), "the finding in Spanish");
        ok(over.spoken().startsWith("Released 2 3/4"), "what is said aloud");
        ok(over.json("fr").contains("\"limit\":") && !over.json("fr").equals(over.json()), "as JSON");
        ok(over.equals(form().judge()) && !over.equals(form().applied("5").judge()) && !over.equals(null), "equal by value");
        is(Map.of(over, 1).get(form().judge()), 1, "a key of a map");
        is(form().division("1/8").judge().proof(), Proof.NOT_RESOLVED, "what the division proves");
        is(form().date(LocalDate.of(2024, 5, 6)).judge().day(), Optional.of(LocalDate.of(2024, 5, 6)), "a day in and out");
        is(new Form().chamber("30").released("50,8").applied("104,8").defaultUnit(Unit.MM).decimalComma(true).judge()
                   .verdict(), Verdict.OUT_OF_ADJUSTMENT, "a form in millimetres with decimal commas");
        rows(over);
    }

    static void rows(Finding over) {
        Finding row = form().applied("2-Jan").judgeRow();
        RodtravelException error = row.error().get();
        is(List.of(row.verdict(), error.status(), error.field(), error.column()),
           List.of(Verdict.UNDETERMINED, Status.DATE_CELL, "applied", 1), "a row");
        is(form().judgeRow().error(), Optional.empty(), "a sound row");
        is(form().judgeRow(), over, "is judged as by judge");
    }

    static void theRest() {
        Finding over = form().judge();
        Vehicle vehicle = Vehicle.judge(List.of(WheelEnd.of("1L", over).adjuster("automatic").armLength(6),
                                                WheelEnd.of("1R", form().applied(5).judge())));
        is(List.of(vehicle.outcome(), vehicle.share()), List.of(Outcome.AMBIGUOUS, ratio(1, 4)), "half a brake of two");
        is(vehicle.outOfAdjustment() + vehicle.inAdjustment(), 2L, "counts are numbers");
        ok(vehicle.json().contains("find-fault"), "what to do next");
        is(Vehicle.judge(List.of(WheelEnd.of("1L", over)), 10).outcome(), Outcome.UNDETERMINED, "brakes not measured");
        is(new AirForm("warning").pressure(62).rules("us-cdl").judge().result(), AirResult.GOOD, "the low-pressure warning");
        is(new AirForm(AirCheck.WARNING).pressure("60").rules("us-newvehicle").judge().atLimit(), true, "at the edge");
        is(new Tally().brakes(6).full(1).half(1).judge().outcome(), Outcome.AMBIGUOUS, "the chart of whole brakes");
        Identification which = new Clues().stamp("24").identify();
        is(List.of(which.strictLimit(), which.nextObservation()), List.of(ratio(7, 4), Observation.LONG_SIGN), "identified");
        ok(which.count() > 2 && which.toString().contains("candidates"), "candidates");
        is(List.of(Chamber.of("30LS").size(), Chamber.of("30LS").strokeClass()), List.of("30", StrokeClass.LONG), "a mark");
        is(Chamber.of("30LS").toString(), "clamp 30 long", "as a text");
        is(new Marks("36").date(LocalDate.of(2021, 10, 13)).findLimit().limit(), ratio(9, 4), "a limit on a day");
        is(new Marks("24").ratedStroke(3).findLimit().limit(), ratio(5, 2), "with a mark more");
        ok(Rules.all().size() > 5 && Rules.of("us-cdl").airLimits("fr").size() > 3 && Rules.all().contains(Rules.of("us-cdl"))
           && Rules.of("us-fmcsr").limits().contains("limits"), "rules");
        Rules yard = Rules.of("us-fmcsr").load("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard");
        Finding kept = form().applied("5 1/4").rules(yard).judge();
        ok(kept.reasons().contains(Reason.OVER_OWN_LIMIT) && kept.limit().get().compareTo(kept.lawLimit().get()) < 0
           && kept.rules().equals("yard"), "a carrier's own limit");
    }

    static void columns() {
        List<Object> chamber = Arrays.asList("30L", "30", null, "30L", "30"),
                     released = List.of("2 3/4", "2 1/8", "1", "2-Jan", "2.750001"),
                     applied = List.of("5 5/16", Ratio.of(33, 8), "2", "5", "4.612345");
        Columns found = new Form().psi(95).judgeColumns(Map.of("chamber", chamber, "Released", released, "applied", applied));
        for (int i = 0; i < 5; i++) {
            Finding one = new Form().psi(95).chamber(chamber.get(i)).released(released.get(i)).applied(applied.get(i)).judgeRow();
            is(List.of(found.verdicts().get(i), found.reasons().get(i), found.strokes().get(i), found.limits().get(i)),
               List.of(one.verdict(), one.reasons(), one.appliedStroke(), one.limit()), "row " + i + " of columns");
        }
        is(found.flags(), List.of(List.of(), List.of(), List.of(ColumnFlag.MISSING), List.of(ColumnFlag.INVALID), List.of()), "flags");
        is(new Form().judgeColumns(Map.of("chamber", List.of(), "released", List.of(), "applied", List.of())).size(), 0, "none");
        is(new Form().judgeColumns(Map.of("chamber", List.of(""), "released", List.of(""), "applied", List.of(""))).verdicts(),
           List.of(Verdict.UNDETERMINED), "one blank row");
        Map<String, List<?>> sound = Map.of("chamber", List.of("30", "30"), "released", List.of("1", "1"),
                                            "applied", List.of("2", "2"));
        for (String name : List.of("released", "applied"))
            for (List<?> cells : List.of(List.of("1"), List.of("1\u001f", "1"), List.of(2.5, "1")))
                refused("argument " + name + " 0 0", () -> {
                    Map<String, List<?>> broken = new java.util.HashMap<>(sound);
                    broken.put(name, cells);
                    new Form().judgeColumns(broken);
                });
        refused("argument colour 0 0", () -> new Form().judgeColumns(Map.of("colour", List.of("red"))));
        refused("syntax psi 1 0", () -> new Form().psi("high").judgeColumns(sound));
    }

    static void stepsAndReservoirs() {
        List<StepText> steps = new Steps().vehicle(VehicleClass.SINGLE).rules("ca-on").in("");
        StepText warning = steps.get(3);
        is(warning.step(), Step.WARNING, "a step");
        ok(warning.text(StepPart.DEFECTIVE).contains("below 55 psi") && warning.row().get().contains("warning"), "its figures");
        ok(!new Steps().rules("ca-on").in("fr").get(0).text(StepPart.TITLE).equals(steps.get(0).text(StepPart.TITLE)),
           "in French");
        ok(new Steps().vehicle("combination").rules("ca-on").in("").size() > steps.size(), "a combination has more steps");
        refused("syntax vehicle 1 0", () -> new Steps().vehicle("sledge").in(""));
        is(Reservoirs.ratedVolume("30"), Ratio.of(89), "the volume of a chamber");
        is(Reservoirs.requiredVolume(Ratio.of(464), false), Ratio.of(5568), "of its reservoirs");
        is(Reservoirs.requiredVolume(Ratio.of(464), true), Ratio.of(3712), "of a trailer's");
        is(Reservoirs.buildUpSeconds(Ratio.of(11136), Ratio.of(5568)), Ratio.of(50), "seconds");
        Ratio psi = Ratio.of(105), volume = Ratio.of(5568), chambers = Ratio.of(464), full = Ratio.of(1);
        is(Reservoirs.estimateApplication(psi, volume, chambers, full), Ratio.of(12453, 130), "an estimate");
        is(Reservoirs.estimateApplications(psi, Ratio.of(60), volume, chambers, full), 5, "another");
        refused("argument chambers 0 0", () -> Reservoirs.requiredVolume(Ratio.of(-1), false));
        refused("argument volumes 0 0", () -> Reservoirs.buildUpSeconds(full, Ratio.of(0)));
        refused("argument estimate 0 0", () -> Reservoirs.estimateApplication(full, full, full, Ratio.of(2)));
        refused("unknown-chamber chamber 0 0", () -> Reservoirs.ratedVolume("bolt A"));
    }

    static void numbers() {
        List<Object> same = List.of("4 1/8", "4.125", "4⅛", new StringBuilder("4 1/8"), Ratio.of(33, 8),
                                    new BigDecimal("4.125"));
        for (Object applied : same)
            is(new Form().chamber("30").released("2 1/8").applied(applied).judge().appliedStroke(), ratio(2, 1),
               applied.getClass().getName());
        for (Object applied : List.of(4, 4L, BigInteger.valueOf(4), new BigDecimal("4.00")))
            is(new Form().chamber("30").released("2 1/8").applied(applied).judge().appliedStroke(), ratio(15, 8),
               applied.getClass().getName());
        is(Rodtravel.readLength("44.45 mm"), Ratio.of(7, 4), "millimetres");
        is(Rodtravel.readLength("44.45", Unit.MM), Ratio.of(7, 4), "by their unit");
        is(List.of(Rodtravel.readPressure("95"), Rodtravel.readSeconds("1:30"), Rodtravel.readDate("14-OCT-21")),
           List.of(Ratio.of(95), Ratio.of(90), LocalDate.of(2021, 10, 14)), "readers");
        is(Rodtravel.writeLength(Ratio.of(-7, 4)), "-1 3/4", "back to a text");
        Ratio half = Ratio.of("-2/-4".replace("-", ""));
        is(List.of(half.plus(Ratio.of(1)), half.minus(Ratio.of(1)), half.times(half), half.dividedBy(Ratio.of(-3))),
           List.of(Ratio.of(3, 2), Ratio.of(1, -2), Ratio.of(1, 4), Ratio.of(-1, 6)), "arithmetic");
        is(List.of(Ratio.of("-1/16").toString(), Ratio.of(4, 2).toString(), half.toBigDecimal(), half.hashCode()),
           List.of("-1/16", "2", new BigDecimal("0.5"), Ratio.of(2, 4).hashCode()), "and texts");
        try {
            Ratio.of(1, 0);
            ok(false, "no denominator of zero");
        } catch (ArithmeticException error) {
            ok(Ratio.of(1, 3).compareTo(half) < 0 && half.equals(Ratio.of(new BigDecimal("5E-1"))), "order");
        }
    }

    static void refusedTexts() {
        for (Object value : List.of(4.125, 4.0f, 1e300, Double.NaN))
            refused("argument applied 0 0", () -> form().applied(value));
        refused("date-cell applied 1 0", () -> form().applied("2-Jan").judge());
        refused("syntax applied 5 0", () -> form().applied("4 1/").judge());
        refused("negative applied 1 0", () -> form().applied(Ratio.of(-1, 8)).judge());
        refused("empty applied 0 0", () -> form().applied(null).judge());
        refused("argument colour 0 0", () -> form().set("colour", "red").judge());
        refused("argument name 0 0", () -> form().set("a\0", "red"));
        refused("argument applied 0 0", () -> form().applied("4\0"));
        refused("argument applied 0 0", () -> form().applied("4\ud83d"));
        refused("syntax applied 2 0", () -> form().applied("4\ud83d\ude00").judge());
        refused("argument applied 0 0", () -> form().applied(List.of(4)));
        refused("range applied 0 0", () -> form().applied(new BigDecimal("1E+1000000000")));
        refused("syntax default_unit 1 0", () -> form().defaultUnit("ells").judge());
        refused("unknown-rules - 0 0", () -> form().rules("atlantis"));
        refused("unknown-rules - 0 0", () -> Rules.of(null));
        refused("argument unit 0 0", () -> Rodtravel.readLength("3", "ells"));
        refused("syntax - 3 0", () -> Rodtravel.readLength("4½¼"));
        refused("range length 0 0", () -> Rodtravel.writeLength(Ratio.of(BigInteger.TEN.pow(30), BigInteger.ONE)));
        refused("laxer limit 19 2", () -> Rules.of("us-fmcsr").load("family,size,class,limit\nclamp,30,standard,3\n", "yard"));
        refused("argument stroke_class 0 0", () -> StrokeClass.of("tall"));
    }

    static void refusedValues() {
        Finding over = form().judge();
        refused("argument ends 0 0", () -> Vehicle.judge(List.of()));
        refused("argument finding 0 1", () -> Vehicle.judge(List.of(WheelEnd.of("1L", null))));
        refused("syntax position 1 2", () -> Vehicle.judge(List.of(WheelEnd.of("1L", over), WheelEnd.of("left", over))));
        refused("argument adjuster 0 1", () -> Vehicle.judge(List.of(WheelEnd.of("1L", over).adjuster(1.5))));
        refused("argument brakes 0 0", () -> Vehicle.judge(List.of(WheelEnd.of("1L", over)), -1));
        refused("syntax pressure 1 0", () -> new AirForm("warning").pressure("high").judge());
        refused("argument tally 0 0", () -> new Tally().brakes(1).full(2).judge());
        refused("argument language 0 0", () -> over.json("xx"));
        refused("argument colour 0 0", () -> over.get("colour"));
        refused("argument verdict 0 0", () -> over.exact("verdict"));
        Finding closed = form().judge();
        closed.close();
        closed.close();
        refused("argument - 0 0", closed::verdict);
        refused("argument - 0 0", closed::json);
        refused("argument - 0 1", () -> Vehicle.judge(List.of(WheelEnd.of("1L", closed))));
        try {
            form().applied("2-Jan").judge();
        } catch (IllegalArgumentException error) {
            is(error.getMessage(), "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "as a text");
            RodtravelException own = (RodtravelException) error;
            ok(!own.say("fr-CA").equals(own.text()) && own.say("xx").equals(own.text()), "in another language");
        }
        is(form().judge(), over, "after an error all is well");
    }

    static boolean work(int times) {
        return IntStream.range(0, times).allMatch(i -> {
            try {
                form().applied("2-Jan").judge();
                return false;
            } catch (RodtravelException error) {
                return form().judge().margin().equals(ratio(-1, 16));
            }
        });
    }

    static void threads() throws Exception {
        boolean[] right = new boolean[4];
        Thread[] all = IntStream.range(0, 4).mapToObj(i -> new Thread(() -> right[i] = work(200))).toArray(Thread[]::new);
        Finding shared = form().judge();
        Thread closing = new Thread(shared::close);
        for (Thread each : all)
            each.start();
        closing.start();
        try {
            while (shared.verdict() == Verdict.OUT_OF_ADJUSTMENT)
                Thread.onSpinWait();
        } catch (RodtravelException closed) {
            ok(closed.status() == Status.ARGUMENT, "closed meanwhile");
        }
        for (Thread each : all)
            each.join();
        is(Arrays.toString(right), "[true, true, true, true]", "threads");
    }

    static long pages() throws Exception {
        Path memory = Path.of("/proc/self/statm");
        return Files.exists(memory) ? Long.parseLong(Files.readString(memory).split(" ")[1]) : 0;
    }

    /** A million calls, and the memory of the process before and after; one value in two is left to the collector. */
    static void memory(int calls) throws Exception {
        long before = 0;
        for (int part = 0; part < 5; part++) {
            for (int i = 0; i < calls / 10; i++) {
                form().judgeRow().sentence();
                try (Finding closed = form().applied("2-Jan").judgeRow()) {
                    closed.verdict();
                }
            }
            System.gc();
            Thread.sleep(200);
            before = part == 1 ? pages() : before;
        }
        long more = pages() - before;
        ok(more < 8000, "nothing is lost");
        System.out.println("# " + more + " pages more");
    }

    public static void main(String[] arguments) throws Exception {
        System.setOut(new PrintStream(System.out, true, "UTF-8"));
        if (arguments.length > 0) {
            memory(Integer.parseInt(arguments[0]));
        } else {
            wheelEnd();
            theRest();
            columns();
            stepsAndReservoirs();
            numbers();
            refusedTexts();
            refusedValues();
            threads();
            memory(10000);
        }
        System.out.println("1.." + count);
        System.exit(failed ? 1 : 0);
    }
}
