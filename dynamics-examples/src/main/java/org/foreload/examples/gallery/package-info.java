/**
 * What there is to see: one maker of pictures for each answer of the library. Each takes what the core returns and
 * draws nothing that is not in it; the caption gives the numbers.
 */
package org.foreload.examples.gallery;
