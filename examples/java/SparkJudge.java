// SPDX-License-Identifier: Apache-2.0
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.api.java.UDF1;
import rodtravel.*;

/** A function of Spark that judges a wheel end: a struct of texts, with the names of {@link Form}, becomes a struct of
 * verdict, reasons, stroke, limit and margin. Numbers are exact texts in inches, "41/16". A text that cannot be read is
 * a reason. bindings/python/CLUSTER.md says how it is registered. */
public class SparkJudge implements UDF1<Row, Row> {
    private static final long serialVersionUID = 1;

    @Override
    public Row call(Row given) {
        Form form = new Form();
        for (String name : given.schema().fieldNames())
            form.set(name, given.getAs(name));
        try (Finding found = form.judgeRow()) {
            String reasons = found.reasons().stream().map(Reason::word).collect(Collectors.joining(" "));
            return RowFactory.create(found.verdict().word(), reasons, text(found.appliedStroke()), text(found.limit()),
                                     text(found.margin()));
        }
    }

    private static String text(Optional<Ratio> number) {
        return number.map(Ratio::toString).orElse(null);
    }
}
