package org.foreload.examples.recording;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Finds the encoding of a text by its first bytes: a mark, zeros of 16-bit text, valid UTF-8; else Windows-1252. */
final class TextEncoding {

    /** Bytes that are looked at. */
    private static final int SAMPLE = 1 << 16;

    private TextEncoding() {}

    /** A reader of the text after its byte-order mark; characters that cannot be decoded are replaced. */
    static Reader reader(InputStream in) throws IOException {
        BufferedInputStream bytes = new BufferedInputStream(in, SAMPLE + 8);
        bytes.mark(SAMPLE + 4);
        byte[] sample = bytes.readNBytes(SAMPLE);
        bytes.reset();
        if (starts(sample, 0xEF, 0xBB, 0xBF)) {
            bytes.skipNBytes(3);
            return decoded(bytes, StandardCharsets.UTF_8);
        }
        if (starts(sample, 0xFF, 0xFE)) {
            bytes.skipNBytes(2);
            return decoded(bytes, StandardCharsets.UTF_16LE);
        }
        if (starts(sample, 0xFE, 0xFF)) {
            bytes.skipNBytes(2);
            return decoded(bytes, StandardCharsets.UTF_16BE);
        }
        return decoded(bytes, guess(sample));
    }

    private static Charset guess(byte[] sample) {
        int even = 0;
        int odd = 0;
        for (int i = 0; i < sample.length; i++) {
            if (sample[i] == 0) {
                even += i % 2 == 0 ? 1 : 0;
                odd += i % 2;
            }
        }
        // In 16-bit text of plain letters every other byte is zero.
        if (odd > sample.length / 4 && even == 0) {
            return StandardCharsets.UTF_16LE;
        }
        if (even > sample.length / 4 && odd == 0) {
            return StandardCharsets.UTF_16BE;
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        // A character that the sample cuts in two is no error.
        CoderResult result = decoder.decode(ByteBuffer.wrap(sample), CharBuffer.allocate(sample.length + 1), false);
        return result.isError() ? Charset.forName("windows-1252") : StandardCharsets.UTF_8;
    }

    private static Reader decoded(InputStream in, Charset charset) {
        return new InputStreamReader(
                in,
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
    }

    private static boolean starts(byte[] sample, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= sample.length || (sample[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
