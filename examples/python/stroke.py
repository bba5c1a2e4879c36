# SPDX-License-Identifier: Apache-2.0
"""One wheel end: verdict, figures, reasons, source. Needs nothing but rodtravel."""
import rodtravel as rt

finding = rt.judge("30", "2 1/8", "4 3/16", psi="95 psi", division="1/16", date="2024-05-06")
print(finding.verdict)
print(finding)
for sentence in finding.sentences:
    print("-", sentence)
print(finding.proof_sentence)
print("Law:", finding.source)

try:
    rt.judge("30", "2 1/8", "2-Jan")
except rt.Error as error:
    print("Refused:", error)
