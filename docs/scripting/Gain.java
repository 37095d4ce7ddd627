import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Locale;

/** Reads the JSON of `explore` from standard input and says what it found in a line. */
public class Gain {
    public static void main(String[] args) throws IOException {
        JsonNode answer = new ObjectMapper().readTree(System.in);
        JsonNode best = answer.get("best");
        System.out.printf(
                Locale.ROOT,
                "%s release, brake %.1f m before turn-in, gains %.2f s%n",
                best.at("/release/shape").asText(),
                -best.get("brake_point_m").asDouble(),
                answer.get("gain_s").asDouble());
    }
}
