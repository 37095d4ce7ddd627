package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The schemas and the readers know the same fields and refuse the same files. */
class SchemaTest {

    /** Where the cars and corners of the examples lie. */
    private static final Path DEMOS = Path.of("../../dynamics-examples/src/main/resources/org/foreload/examples/demo");

    private static final List<String> CARS = List.of("road", "light", "downforce");
    private static final List<String> CORNERS = List.of("hairpin", "medium", "fast");
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonNode CAR_TEXT = schemaText("car.schema.json");
    private static final JsonNode CORNER_TEXT = schemaText("corner.schema.json");
    private static final Schema CAR = schema(CAR_TEXT);
    private static final Schema CORNER = schema(CORNER_TEXT);

    private static JsonNode schemaText(String name) {
        try {
            return MAPPER.readTree(Files.readString(Path.of("..", "..", "docs", name)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Schema schema(JsonNode text) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(text);
    }

    private static ObjectNode demo(String name) {
        try {
            return (ObjectNode) MAPPER.readTree(Files.readString(DEMOS.resolve(name + ".json")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyDemoIsValid() {
        CARS.forEach(name -> assertEquals(List.of(), CAR.validate(demo("car-" + name)), name));
        CORNERS.forEach(name -> assertEquals(List.of(), CORNER.validate(demo("corner-" + name)), name));
    }

    @Test
    void everyDemoIsReadWithoutAWarning() {
        CARS.forEach(name -> assertEquals(
                List.of(), CarFile.read(DEMOS.resolve("car-" + name + ".json")).warnings(), name));
        CORNERS.forEach(name -> assertEquals(
                List.of(),
                CornerFile.read(DEMOS.resolve("corner-" + name + ".json")).warnings(),
                name));
    }

    @Test
    void schemaAndReaderKnowTheSameFields() {
        assertEquals(Set.copyOf(CarFile.NAMES), properties(CAR_TEXT));
        assertEquals(Set.copyOf(TyreFields.NAMES), properties(CAR_TEXT.at("/$defs/tyre")));
        assertEquals(Set.copyOf(CornerFile.NAMES), properties(CORNER_TEXT));
        assertEquals(Set.copyOf(CornerFile.SEGMENT_NAMES), properties(CORNER_TEXT.at("/$defs/segment")));
    }

    private static Set<String> properties(JsonNode schema) {
        Set<String> names = new HashSet<>();
        schema.get("properties").fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.cars();
    }

    @Provide
    Arbitrary<DrawnCorner> corners() {
        return SampleCars.corners();
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void whatIsWrittenIsValid(@ForAll("cars") Car car, @ForAll("corners") DrawnCorner corner) throws IOException {
        assertEquals(List.of(), CAR.validate(MAPPER.readTree(CarFile.write(car))));
        assertEquals(List.of(), CORNER.validate(MAPPER.readTree(CornerFile.write(corner))));
    }

    /** One change to a file: at some object in it, one field is dropped, renamed, or given another value. */
    record Change(int object, int field, Kind kind, JsonNode value) {

        enum Kind {
            DROP,
            RENAME,
            REPLACE
        }

        void applyTo(JsonNode file) {
            List<ObjectNode> objects = new ArrayList<>();
            collect(file, objects);
            ObjectNode target = objects.get(object % objects.size());
            List<String> names = new ArrayList<>();
            target.fieldNames().forEachRemaining(names::add);
            if (names.isEmpty()) {
                return;
            }
            String name = names.get(field % names.size());
            switch (kind) {
                case DROP -> target.remove(name);
                case RENAME -> target.set(name + "s", target.remove(name));
                default -> target.set(name, value);
            }
        }

        private static void collect(JsonNode node, List<ObjectNode> objects) {
            if (node instanceof ObjectNode object) {
                objects.add(object);
            }
            node.forEach(child -> collect(child, objects));
        }
    }

    @Provide
    Arbitrary<List<Change>> changes() {
        JsonNodeFactory json = JsonNodeFactory.instance;
        Arbitrary<JsonNode> values = Arbitraries.oneOf(
                Arbitraries.doubles().between(-3, 3).ofScale(2).map(json::numberNode),
                Arbitraries.of(0, 1, -1, 2, 1000, -20).map(json::numberNode),
                Arbitraries.of(
                                "left",
                                "right",
                                "arc",
                                "spiral",
                                "straight",
                                "rigid",
                                "front",
                                "brush",
                                "magic-formula",
                                "1")
                        .map(json::textNode),
                Arbitraries.of(json.nullNode(), json.booleanNode(true), json.objectNode(), json.arrayNode()));
        Arbitrary<Change> change = Combinators.combine(
                        Arbitraries.integers().between(0, 20),
                        Arbitraries.integers().between(0, 50),
                        Arbitraries.of(Change.Kind.class),
                        values)
                .as(Change::new);
        return change.list().ofMinSize(1).ofMaxSize(3);
    }

    @Provide
    Arbitrary<String> carNames() {
        return Arbitraries.of(CARS);
    }

    @Provide
    Arbitrary<String> cornerNames() {
        return Arbitraries.of(CORNERS);
    }

    /** All but one rule: that the CG lies inside the wheelbase, no schema can say. */
    @Property(edgeCases = EdgeCasesMode.NONE)
    void readerAndSchemaRefuseTheSameCars(@ForAll("carNames") String name, @ForAll("changes") List<Change> changes) {
        ObjectNode car = demo("car-" + name);
        changes.forEach(change -> change.applyTo(car));
        InputException refusal = refusal(() -> CarFile.parse(car.toString(), "car.json"));
        boolean valid = CAR.validate(car).isEmpty();
        if (valid && refusal != null && "cg_to_front_axle_m".equals(refusal.field())) {
            assertTrue(refusal.getMessage().contains("below"), refusal.line());
            return;
        }
        assertEquals(valid, refusal == null, () -> car + "\n" + CAR.validate(car) + "\n" + refusal);
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void readerAndSchemaRefuseTheSameCorners(
            @ForAll("cornerNames") String name, @ForAll("changes") List<Change> changes) {
        ObjectNode corner = demo("corner-" + name);
        changes.forEach(change -> change.applyTo(corner));
        InputException refusal = refusal(() -> CornerFile.parse(corner.toString(), "corner.json", Path.of("")));
        boolean valid = CORNER.validate(corner).isEmpty();
        assertEquals(valid, refusal == null, () -> corner + "\n" + CORNER.validate(corner) + "\n" + refusal);
    }

    /** The random changes above hardly ever come this close to an end of a range. */
    @ParameterizedTest
    @CsvSource({
        "curvature_factor, 0.999999, true",
        "curvature_factor, 0.9999995, false",
        "curvature_factor, 1, false",
        "curvature_factor, -20, true",
        "curvature_factor, -20.000001, false",
        "shape_factor, 1, false",
        "shape_factor, 1.000001, true",
        "shape_factor, 1.999999, true",
        "shape_factor, 2, false"
    })
    void readerAndSchemaEndTheMagicFormulaAtTheSameNumbers(String field, double value, boolean allowed) {
        ObjectNode car = demo("car-light");
        ((ObjectNode) car.get("front_tyre"))
                .put("model", "magic-formula")
                .put("shape_factor", 1.5)
                .put(field, value);
        assertEquals(allowed, CAR.validate(car).isEmpty(), "schema");
        assertEquals(allowed, refusal(() -> CarFile.parse(car.toString(), "car.json")) == null, "reader");
    }

    private static InputException refusal(Runnable reading) {
        try {
            reading.run();
            return null;
        } catch (InputException e) {
            assertEquals(1, e.line().lines().count(), e.line());
            return e;
        }
    }

    @Test
    void theSchemasThemselvesAreChecked() {
        assertThrows(AssertionError.class, () -> assertEquals(List.of(), CAR.validate(demo("corner-fast"))));
    }
}
