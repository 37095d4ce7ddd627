package org.foreload.examples.sheet;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Handover;
import org.foreload.optimum.ShapeRanking;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepMemory;
import org.foreload.study.Proportion;
import org.foreload.study.Sweep;

/** All that is on the sheet of a car and a corner: computed here, drawn and written elsewhere. */
public final class Sheet {

    private final CornerStudy study;
    private final SheetRequest request;
    private final int tried;
    private final Surroundings near;
    private final Optional<Candidate> straight;
    private final List<Overdone> overdone;
    private final Practice practice;

    private Sheet(
            CornerStudy study,
            SheetRequest request,
            int tried,
            Surroundings near,
            Optional<Candidate> straight,
            List<Overdone> overdone,
            Practice practice) {
        this.study = study;
        this.request = request;
        this.tried = tried;
        this.near = near;
        this.straight = straight;
        this.overdone = overdone;
        this.practice = practice;
    }

    /**
     * Computes a sheet: a sweep for the plan, the releases beside it, what goes wrong, and the way to practise it.
     *
     * @param study car, corner and margin
     * @param request what it shall be made from
     * @param sweep on how many threads, and who watches the progress and may stop it
     * @return empty after a stop, and where no release that was tried makes the corner or needs the brake
     */
    public static Optional<Sheet> of(CornerStudy study, SheetRequest request, Sweep sweep) {
        return of(study, request, sweep, stage -> {});
    }

    /**
     * The same, saying what is done next.
     *
     * @param stages hears the name of each stage when it begins
     */
    public static Optional<Sheet> of(CornerStudy study, SheetRequest request, Sweep sweep, Consumer<String> stages) {
        stages.accept("1 of 5: releases");
        ReleaseSweep releases = new ReleaseSweep(study, request.releases());
        Exploration exploration = ShapeRanking.refine(releases, releases.coarse(sweep, SweepMemory.NONE), sweep);
        Optional<Candidate> best = exploration.best().filter(one -> one.entry().braked());
        if (best.isEmpty() || !exploration.complete()) {
            return Optional.empty();
        }
        RiskStudy risks = new RiskStudy(study, request.driver(), request.samples(), request.seed());
        stages.accept("2 of 5: the plan that the driver can repeat");
        Optional<DriverPlan> first = DriverPlan.of(risks, exploration, request.accepted(), sweep);
        stages.accept("3 of 5: the releases beside it");
        Optional<Surroundings> near = first.flatMap(one -> Surroundings.of(risks, one, request.accepted(), sweep));
        if (near.isEmpty()) {
            return Optional.empty();
        }
        EntryResult plan = near.get().chosen().plan().entry();
        stages.accept("4 of 5: the plan overdone");
        Optional<List<Overdone>> overdone = Overdone.all(risks, plan.plan(), sweep);
        Optional<Candidate> straight = exploration.baseline();
        stages.accept("5 of 5: practice steps");
        Optional<Practice> practice = practice(risks, request, near.get().chosen(), sweep);
        if (overdone.isEmpty() || practice.isEmpty()) {
            return Optional.empty();
        }
        int tried = exploration.candidates().size() + near.get().tried();
        return Optional.of(new Sheet(study, request, tried, near.get(), straight, overdone.get(), practice.get()));
    }

    private static Optional<Practice> practice(RiskStudy risks, SheetRequest request, DriverPlan chosen, Sweep sweep) {
        BrakePlan plan = chosen.plan().entry().plan();
        Optional<PracticeSteps> steps = PracticeSteps.straightLine(
                        risks, request.releases().buildUpTime(), request.accepted(), sweep)
                .flatMap(now -> PracticeSteps.plan(risks, now, plan, request.steps(), request.accepted(), sweep));
        return Optional.of(new Practice(chosen.risk(), steps));
    }

    /** Car, corner and margin. */
    public CornerStudy study() {
        return study;
    }

    SheetRequest request() {
        return request;
    }

    /** Releases that were tried. */
    public int tried() {
        return tried;
    }

    /**
     * The releases of both sliders, from soft to hard and, of each peak, from brakes that are off early to brakes that
     * are carried too deep, each from its own latest brake point.
     */
    public List<Finding> releases() {
        return near.ladder().rungs();
    }

    /** How many of them have the same peak. */
    public int rungs() {
        return Ladder.RUNGS;
    }

    /** Which of them is the plan: the quickest that the driver can repeat. */
    public int planned() {
        return near.ladder().middle();
    }

    /** What goes with the plan. */
    public Handover handover() {
        return new Handover(
                plan().entry(),
                plan().inHand(),
                request.driver().name(),
                Optional.of(chosen().risk().failed()));
    }

    DriverPlan chosen() {
        return near.chosen();
    }

    /** How often the driver fails with a release that is quicker than the plan; empty for another. */
    Optional<Proportion> failures(int index) {
        return Optional.ofNullable(near.risks().get(index)).map(Risk::failed);
    }

    /** The plan. */
    public Finding plan() {
        return releases().get(planned());
    }

    /** The best straight-line braking, if it makes the corner. */
    public Optional<EntryResult> straight() {
        return straight.map(Candidate::entry);
    }

    /** What is in hand with it, m. */
    OptionalDouble straightInHand() {
        return straight.map(Candidate::inHand)
                .filter(Double::isFinite)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    List<Overdone> overdone() {
        return overdone;
    }

    Practice practice() {
        return practice;
    }
}
