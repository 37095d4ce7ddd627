package org.foreload.examples.manual;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;

/**
 * One Markdown page of the project.
 *
 * @param file where it is
 * @param blocks its fenced blocks, in order
 * @param links where its links and images lead
 * @param code what it says in code letters within a line
 * @param anchors what a link to a heading of it may say after the hash
 */
record Page(Path file, List<Block> blocks, List<String> links, List<String> code, Set<String> anchors) {

    /** The root of the project, seen from this module. */
    static final Path ROOT = Path.of("..");

    /**
     * A fenced block.
     *
     * @param page that holds it
     * @param info what stands after the fence, such as {@code json car.json}
     * @param text what it shows
     */
    record Block(Path page, String info, String text) {

        boolean isLong() {
            return words().contains("long");
        }

        boolean is(String language) {
            return info.equals(language) || info.startsWith(language + " ");
        }

        /** The words after the language. */
        List<String> words() {
            String[] all = info.split(" ");
            return List.of(all).subList(1, all.length);
        }

        @Override
        public String toString() {
            return page + ": " + text;
        }
    }

    static Page read(Path file) {
        List<Block> blocks = new ArrayList<>();
        List<String> links = new ArrayList<>();
        List<String> code = new ArrayList<>();
        Set<String> anchors = new HashSet<>();
        Map<String, Integer> seen = new HashMap<>();
        text(file).accept(new AbstractVisitor() {
            @Override
            public void visit(FencedCodeBlock block) {
                blocks.add(new Block(file, block.getInfo().strip(), block.getLiteral()));
            }

            @Override
            public void visit(Link link) {
                links.add(link.getDestination());
                visitChildren(link);
            }

            @Override
            public void visit(Image image) {
                links.add(image.getDestination());
            }

            @Override
            public void visit(Code word) {
                code.add(word.getLiteral());
            }

            @Override
            public void visit(Heading heading) {
                String anchor = anchor(words(heading));
                int before = seen.merge(anchor, 1, Integer::sum) - 1;
                anchors.add(before == 0 ? anchor : anchor + "-" + before);
            }
        });
        return new Page(file, blocks, links, code, anchors);
    }

    /** All pages of the project, but none that a build has made. */
    static List<Page> all() throws IOException {
        try (Stream<Path> root = Files.list(ROOT);
                Stream<Path> docs = Files.walk(ROOT.resolve("docs"))) {
            return Stream.concat(root, docs)
                    .filter(file -> file.toString().endsWith(".md"))
                    .filter(file -> !file.startsWith(ROOT.resolve("docs/apidocs")))
                    .sorted()
                    .map(Page::read)
                    .toList();
        }
    }

    /** The anchor that code hosts make of a heading. */
    private static String anchor(String heading) {
        return heading.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N} _-]", "")
                .replace(' ', '-');
    }

    private static Node text(Path file) {
        try {
            return Parser.builder().build().parse(Files.readString(file));
        } catch (IOException e) {
            throw new AssertionError(file.toString(), e);
        }
    }

    private static String words(Node heading) {
        List<String> words = new ArrayList<>();
        heading.accept(new AbstractVisitor() {
            @Override
            public void visit(Text text) {
                words.add(text.getLiteral());
            }

            @Override
            public void visit(Code code) {
                words.add(code.getLiteral());
            }
        });
        return words.stream().collect(Collectors.joining());
    }
}
