// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** A stable word of the library, such as a verdict. Its {@code toString} is the word. */
public interface Word {
    /** The word, "in-adjustment". It is never renamed. */
    String word();

    /** What it means, in English. */
    String text();
}
