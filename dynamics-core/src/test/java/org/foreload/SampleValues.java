package org.foreload;

import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.foreload.advice.AdviceSettings;
import org.foreload.advice.Adviser;
import org.foreload.balance.BalanceAxis;
import org.foreload.balance.BalanceStudy;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.FootError;
import org.foreload.braking.Pedal;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.braking.SplineRelease;
import org.foreload.braking.TabulatedRelease;
import org.foreload.comparison.Alignment;
import org.foreload.comparison.Comparison;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.DriverView;
import org.foreload.driver.Hands;
import org.foreload.driver.SpeedPlan;
import org.foreload.driver.Steering;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SampleEntries;
import org.foreload.entry.SimulationSettings;
import org.foreload.envelope.EnvelopeSettings;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.grip.BrakeDistribution;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GripLimits;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.integrate.Accuracy;
import org.foreload.limit.Band;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitResult;
import org.foreload.line.RoadLine;
import org.foreload.line.RoadLines;
import org.foreload.load.LoadTransfer;
import org.foreload.optimum.BestRelease;
import org.foreload.optimum.SampleStudies;
import org.foreload.path.Corner;
import org.foreload.path.MeasuredLine;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.Turn;
import org.foreload.pedal.PedalStudy;
import org.foreload.pedal.PitchResponse;
import org.foreload.recording.Cleaning;
import org.foreload.recording.KnownRun;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.ResponseSurface;
import org.foreload.study.Rounds;
import org.foreload.study.Search;
import org.foreload.study.Slopes;
import org.foreload.study.Sweep;
import org.foreload.trace.Trace;
import org.foreload.tyre.ContactPatch;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/** A value for each type that the core's public constructors and methods take: for tests that try all of them. */
final class SampleValues {

    /** What is not simply put together from its parts, or must be no more than plausible. */
    private final Map<Class<?>, Object> made = new HashMap<>();

    SampleValues() {
        Car car = SampleEntries.ROAD;
        CornerStudy study = SampleStudies.roadCar();
        Corner corner = SampleStudies.corner();
        IdealProfile bound = IdealEntry.solve(car, corner);
        BrakePlan plan = SampleStudies.straightLine();
        EntrySimulator simulator = study.simulator();
        Sweep never = new Sweep(1, new Stopped());
        GripLimits limits = GripLimits.of(car);
        Trim trim = Trim.find(car, 30, 5, 0).orElseThrow();
        ResponseSurface.Points points =
                ResponseSurface.at(LowDiscrepancy.points(2, 20, 1), 0).orElseThrow();
        RoadLine line = RoadLines.constantRadius(corner.path(), 1);
        List.of(
                        car,
                        car.chassis(),
                        car.suspension(),
                        car.aerodynamics(),
                        car.driveline(),
                        corner,
                        study,
                        simulator,
                        bound,
                        plan,
                        plan.braking(),
                        plan.release(),
                        simulator.run(plan),
                        study.search(),
                        new ReleaseSweep(study, SweepPlan.standard()),
                        SweepPlan.standard(),
                        never,
                        BestRelease.SIMPLE_SHAPES,
                        new RiskStudy(study, Scatter.PRACTISED, 1, 1),
                        DriverSettings.practised(),
                        Hands.practised(),
                        new SpeedPlan(new double[] {0, 100}, new double[] {20, 30}),
                        new SimulationSettings(1e-4, 1),
                        limits,
                        limits.at(0.01, 0, 0, 0),
                        limits.at(0.01, 0, 0, 0).atSpeed(400, 1),
                        BrakingGrip.of(car, 30),
                        BrakeDistribution.of(car),
                        LoadTransfer.of(car),
                        PitchResponse.of(car),
                        corner.path(),
                        new TabulatedRelease(new double[] {0, 0.4, 1}, new double[] {1, 0.5, 0}),
                        new SplineRelease("name", 0.6, 0.3),
                        new SlipCurve.MagicFormula(1.4, -0.3),
                        new Pedal.TravelSensing(20, 30, 60, 0.02, 0.1),
                        new BicycleModel(car),
                        new SlipLag(car),
                        trim,
                        LinearHandling.of(trim),
                        trim.point(),
                        line,
                        line.line(),
                        org.foreload.limit.Hands.practised(8),
                        LimitOptions.STANDARD,
                        new LimitResult(List.of(), 1, false, 1, 1, corner.path()),
                        BalanceStudy.standard(),
                        new PedalStudy(FootError.Leg.pushing(200), 2, 1),
                        new Search(new double[2], new double[] {1, 1}, 1, () -> true),
                        new Slopes(new double[] {1, 2}, new double[][] {{0, 1}, {1, 0}}),
                        MeasuredLine.of(new double[] {0, 2, 4, 6, 8, 10}, new double[6], 5),
                        new Accuracy(new double[] {1e-6}, 1, 1, 1, 1e-9, 1000),
                        points,
                        points.through(Collections.nCopies(20, new double[] {1})),
                        new Rounds(1, new Stopped(), 1),
                        new WheelForces(),
                        new ContactPatch(),
                        new DriverView(),
                        new Steering(car, corner.path(), Hands.practised()),
                        BalanceAxis.brakeShares(car, 0.05, 2),
                        new Trace.Builder().column("s_m", "m").build())
                .forEach(one -> made.put(one.getClass(), one));
        made.put(Path.class, corner.path());
        made.put(Band.class, Band.road());
        made.put(Tyre.class, car.frontTyre());
        made.put(SlipCurve.class, new SlipCurve.Brush());
        made.put(ReleaseShape.class, ReleaseShapes.LINEAR);
        made.put(Segment.class, Segment.arc(20, 50, Turn.LEFT));
        made.put(Pedal.class, new Pedal.ForceSensing(50, 0.02, 0.1));
        made.put(Sweep.Progress.class, new Stopped());
        made.put(String.class, "name");
        made.put(Object.class, "value");
        made.put(Class.class, Car.class);
        made.put(Braking.class, plan.braking());
        made.put(EntryResult.class, simulator.run(plan));
        made.put(BrakePointSearch.class, study.search());
        recorded(new KnownRun(plan).recording(50, 0, 0.1, 1, true));
    }

    /** A recording, what is measured in it, and what is made of that. */
    private void recorded(Recording recording) {
        Run run = Run.of(recording, Cleaning.STANDARD);
        List<RecordedCorner> corners = RecordedCorners.of(run);
        FrictionEnvelope limits = FrictionEnvelope.of(Collections.nCopies(20, run), EnvelopeSettings.STANDARD);
        List.of(
                        recording,
                        run,
                        corners.get(0),
                        limits,
                        Alignment.of(run, corners, run, corners),
                        Comparison.of(run, corners, run, corners),
                        new Adviser(run, corners, limits, Optional.empty(), AdviceSettings.STANDARD))
                .forEach(one -> made.put(one.getClass(), one));
    }

    /** Stops a sweep before it begins. */
    private static final class Stopped implements Sweep.Progress {
        @Override
        public void update(int done, int total) {
            // Nothing is done.
        }

        @Override
        public boolean stopped() {
            return true;
        }
    }

    /** A value of the type; empty if there is no simple way to one. */
    Optional<Object> of(Type given, double number) {
        Class<?> type = raw(given);
        if (type == double.class) {
            return Optional.of(number);
        } else if (type == int.class) {
            return Optional.of((int) Math.ceil(number));
        } else if (type == long.class) {
            return Optional.of((long) Math.ceil(number));
        } else if (type == boolean.class) {
            return Optional.of(true);
        } else if (type == double[].class) {
            return Optional.of(new double[] {0, number});

        } else if (type.isArray()) {
            return Optional.of(Array.newInstance(type.getComponentType(), 1));
        } else if (type.isEnum()) {
            return Optional.of(type.getEnumConstants()[0]);
        } else if (type == Optional.class) {
            return Optional.of(Optional.empty());
        } else if (type == OptionalDouble.class) {
            return Optional.of(OptionalDouble.empty());
        } else if (type == OptionalInt.class) {
            return Optional.of(OptionalInt.empty());
        } else if (type == Map.class) {
            return Optional.of(Map.of());
        } else if (type == List.class || type == Iterable.class) {
            return Optional.of(
                    given instanceof ParameterizedType list
                            ? of(list.getActualTypeArguments()[0], number)
                                    .map(List::of)
                                    .orElse(List.of())
                            : List.of());
        } else if (made.containsKey(type)) {
            return Optional.of(made.get(type));
        } else if (type.isRecord()) {
            return record(type, number);
        } else if (type.isSealed()) {
            return of(type.getPermittedSubclasses()[0], number);
        } else if (type.isInterface()) {
            return Optional.of(proxy(type));
        }
        return Arrays.stream(type.getConstructors())
                .filter(one -> one.getParameterCount() == 0)
                .findFirst()
                .flatMap(one -> instance(one));
    }

    private static Class<?> raw(Type type) {
        if (type instanceof Class<?> plain) {
            return plain;
        }
        return type instanceof ParameterizedType of ? (Class<?>) of.getRawType() : Object.class;
    }

    private Optional<Object> record(Class<?> type, double number) {
        RecordComponent[] parts = type.getRecordComponents();
        Object[] values = new Object[parts.length];
        Class<?>[] types = new Class<?>[parts.length];
        for (int i = 0; i < parts.length; i++) {
            types[i] = parts[i].getType();
            Optional<Object> value = of(parts[i].getGenericType(), number);
            if (value.isEmpty()) {
                return value;
            }
            values[i] = value.get();
        }
        try {
            return instance(type.getDeclaredConstructor(types), values);
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Optional<Object> instance(Constructor<?> constructor, Object... values) {
        if (!Modifier.isPublic(constructor.getModifiers())) {
            return Optional.empty();
        }
        try {
            return Optional.of(constructor.newInstance(values));
        } catch (ReflectiveOperationException refused) {
            return Optional.empty();
        }
    }

    private static Object proxy(Class<?> type) {
        return Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, (self, method, arguments) -> {
            Class<?> result = method.getReturnType();
            return result == double.class
                    ? (Object) 0.0
                    : result == int.class ? (Object) 0 : result == boolean.class ? (Object) false : null;
        });
    }
}
