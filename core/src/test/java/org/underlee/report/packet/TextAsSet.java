package org.underlee.report.packet;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** The texts of a page one by one, whichever way they are turned: each on a line of its own. */
final class TextAsSet extends PDFTextStripper {
  private final StringBuilder text = new StringBuilder();

  String of(PDPage page) throws IOException {
    output = new StringWriter(); // of no use here, but asked for
    processPage(page);
    return text.toString();
  }

  @Override
  protected void processTextPosition(TextPosition letter) {
    text.append(letter.getUnicode());
  }

  @Override
  protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
    super.processOperator(operator, operands);
    if (operator.getName().equals("ET")) {
      text.append('\n');
    }
  }
}
