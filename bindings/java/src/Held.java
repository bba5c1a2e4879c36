// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** What every object of the library that was found can do. */
interface Held {
    String get(String path);

    String exact(String path);

    String json(String language);

    String say(String language);

    void delete();
}
