/* SPDX-License-Identifier: Apache-2.0 */
int main(void) { return 0; }
