package org.underlee.report.packet;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LambdaExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * The texts that findings, their fixes and questions are made of, read out of the program's own
 * source: whichever of them a model brings forth, none is missed.
 */
final class ToldTexts {
  /** What makes a finding, words, or a fix of what it is given. */
  private static final Set<String> MAKERS =
      Set.of("of", "plain", "with", "measured", "found", "finding");

  private static final Set<String> MADE = Set.of("Words", "Fix", "Finding", "SiteQuestion");

  private static final Pattern WORD = Pattern.compile("\\p{Lower}");

  private ToldTexts() {}

  /** Of these files; texts put together with more than literals are left out. */
  static Set<String> in(List<Path> sources) throws IOException {
    JavaCompiler javac = ToolProvider.getSystemJavaCompiler();
    Set<String> texts = new TreeSet<>();
    try (StandardJavaFileManager files = javac.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              javac.getTask(
                  null, files, null, null, null, files.getJavaFileObjectsFromPaths(sources));
      task.parse().forEach(unit -> new Reader(texts).scan(unit, null));
    }
    return texts;
  }

  private static final class Reader extends TreeScanner<Void, Void> {
    private final Set<String> texts;

    Reader(Set<String> texts) {
      this.texts = texts;
    }

    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
      if (tells(call.getMethodSelect())) {
        call.getArguments().forEach(this::add);
      }
      return super.visitMethodInvocation(call, nothing);
    }

    @Override
    public Void visitNewClass(NewClassTree made, Void nothing) {
      if (MADE.contains(made.getIdentifier().toString())) {
        made.getArguments().forEach(this::add);
      }
      return super.visitNewClass(made, nothing);
    }

    private static boolean tells(ExpressionTree method) {
      if (method instanceof MemberSelectTree member) {
        String of = member.getExpression().toString();
        String name = member.getIdentifier().toString();
        return MAKERS.contains(name) && (MADE.contains(of) || name.equals("found"));
      }
      return method instanceof IdentifierTree own
          && Set.of("finding", "found").contains(own.getName().toString());
    }

    private void add(Tree argument) {
      if (argument instanceof ConditionalExpressionTree either) {
        add(either.getTrueExpression());
        add(either.getFalseExpression());
      } else if (argument instanceof ParenthesizedTree inner) {
        add(inner.getExpression());
      } else if (argument instanceof LambdaExpressionTree late) {
        add(late.getBody());
      } else {
        literal(argument).filter(ToldTexts::speaks).ifPresent(texts::add);
      }
    }

    /** A literal, or several joined. */
    private static Optional<String> literal(Tree tree) {
      if (tree instanceof LiteralTree one && one.getValue() instanceof String text) {
        return Optional.of(text);
      }
      if (tree instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
        return literal(sum.getLeftOperand())
            .flatMap(left -> literal(sum.getRightOperand()).map(left::concat));
      }
      return Optional.empty();
    }
  }

  /**
   * A name has no blank; a template of nothing but places and a paragraph of a code say nothing.
   */
  private static boolean speaks(String text) {
    return text.contains(" ") && WORD.matcher(text.replace("%s", "")).find();
  }
}
