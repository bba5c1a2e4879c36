// SPDX-License-Identifier: Apache-2.0
module rodtravel

go 1.19
