/* SPDX-License-Identifier: Apache-2.0 */
typedef int not_written_yet;
