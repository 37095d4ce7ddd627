package org.foreload.examples.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Many questions to one process, a line of JSON each. */
@Command(
        name = "batch",
        sortOptions = false,
        description = {
            "Reads one question a line from standard input and answers each with one line of JSON, in order, on all "
                    + "processors. A line that is wrong gets an error, and the rest carries on.",
            "",
            "A blank line is wrong, too: the n-th answer is that to the n-th line. Ctrl-C stops and says how many lines have "
                    + "their answer.",
            "",
            "A question is a plan for the car and the corner of the command line, with the fields brake_point_m (left out: "
                    + "the latest that keeps the margin), peak_deceleration_mps2, release_shape, release_start_m, "
                    + "release_end_m, pick_up_m, build_up_time_s, of which only those that differ from the defaults of "
                    + "'foreload entry' need be there; with \"profile\": true the answer has the entry along the line, too, "
                    + "and with \"margin_cost\": true what the margin costs, which takes a second search. "
                    + "Or it is a verb with its options: {\"verb\": \"loads\", \"options\": [\"--deceleration\", \"5\"]}; the "
                    + "options of the command line, car and corner among them, hold for it, too, unless its own say otherwise."
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:  foreload batch --demo-car road < questions.jsonl", "", Cautions.FIRST, Cautions.SECOND
        })
final class BatchVerb extends Verb {

    /** Answers in progress for each thread: enough to keep all busy, few enough to stay in memory. */
    private static final int AHEAD = 16;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Spec
    private CommandSpec spec;

    /** Answers go out as they come; nothing is left to print. */
    @Override
    String answer(Console console) {
        common().onlyJson("with batch: each answer is one line of JSON");
        sweepOptions.check();
        studyOptions.check();
        List<GivenOptions.Given> given = GivenOptions.of(spec, BatchQuestion.OF_THE_ANSWER);
        return placeOptions.ask(console, studyOptions::study, study -> {
            BatchQuestion asked =
                    new BatchQuestion(study, footOptions, studyOptions.buildUpTime(), given, placeOptions::placed);
            Answers answers = new Answers(out(), console);
            console.lastWords(answers::stop);
            answer(asked, console.in(), answers);
            return "";
        });
    }

    private void answer(BatchQuestion asked, InputStream questions, Answers answers) {
        ExecutorService pool = Executors.newFixedThreadPool(sweepOptions.threads(), task -> {
            Thread thread = new Thread(task, "foreload-batch");
            thread.setDaemon(true);
            return thread;
        });
        Deque<Future<String>> pending = new ArrayDeque<>();
        try {
            BufferedReader lines = new BufferedReader(new InputStreamReader(questions, StandardCharsets.UTF_8));
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String question = line;
                pending.add(pool.submit(() -> asked.answer(question)));
                boolean full = pending.size() >= AHEAD * sweepOptions.threads();
                while (!pending.isEmpty() && (full || pending.peek().isDone() || !lines.ready())) {
                    answers.print(pending.poll());
                    full = false;
                }
            }
            while (!pending.isEmpty()) {
                answers.print(pending.poll());
            }
        } catch (IOException e) {
            throw new ComputationException("standard input cannot be read: " + e.getMessage());
        } finally {
            pool.shutdownNow();
        }
    }

    /** The answers that are out: whole lines, none of which comes after the last words of a stop. */
    private static final class Answers {

        private final PrintWriter out;
        private final Console console;
        private int printed;
        private boolean stopped;

        Answers(PrintWriter out, Console console) {
            this.out = out;
            this.console = console;
        }

        void print(Future<String> answer) {
            try {
                print(answer.get());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new ComputationException("stopped before all questions were answered");
            } catch (ExecutionException e) {
                throw new IllegalStateException(e.getCause());
            }
        }

        private synchronized void print(String line) {
            if (!stopped) {
                out.println(line);
                out.flush();
                printed++;
            }
        }

        synchronized void stop() {
            stopped = true;
            console.line("stopped after " + printed + (printed == 1 ? " answer" : " answers")
                    + "; the lines that follow have none");
        }
    }
}
