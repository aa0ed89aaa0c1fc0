package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.now.NowAnswer;
import propcap.results.Answer;
import propcap.results.AnswerKind;

/** Each answer says itself what is written of it, so that no two may say the same. */
class AnswerKindsTest {
  private static final List<AnswerKind> KINDS =
      ArchConfiguration.withThreadLocalScope(AnswerKindsTest::kinds);

  /** Of classes elsewhere nothing is asked, and to read them all takes long. */
  private static List<AnswerKind> kinds(ArchConfiguration reading) {
    reading.setResolveMissingDependenciesFromClassPath(false);
    return new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("propcap.report", "propcap.results")
            .stream()
            .filter(each -> each.isAssignableTo(Answer.class) && !each.isInterface())
            .map(AnswerKindsTest::kind)
            .toList();
  }

  private static AnswerKind kind(JavaClass answer) {
    try {
      return (AnswerKind) answer.reflect().getField("KIND").get(null);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(answer.getName() + " says no KIND", e);
    }
  }

  @Test
  void eachHasItsOwnRecordAndItsOwnFolder() {
    assertThat(KINDS).hasSizeGreaterThanOrEqualTo(13);
    assertThat(KINDS).extracting(AnswerKind::word).doesNotHaveDuplicates();
    assertThat(KINDS).extracting(AnswerKind::ending).doesNotHaveDuplicates();
  }

  /**
   * But for the new sowings.csv of a better plan, which is the grower's plan as it may be, and for
   * the forecast of the whole season that stands beside what is told of a day within it.
   */
  @Test
  void eachHasItsOwnFiles() {
    assertThat(KINDS.stream().flatMap(kind -> own(kind).stream()))
        .filteredOn(name -> !name.equals("sowings.csv"))
        .doesNotHaveDuplicates();
  }

  private static List<String> own(AnswerKind kind) {
    return kind.equals(NowAnswer.KIND)
        ? kind.files().stream().filter(f -> !ForecastAnswer.KIND.files().contains(f)).toList()
        : kind.files();
  }

  /** A record of what was written holds no others. */
  @Test
  void itsFilesAreNamedAsARecordTakesThem() {
    assertThat(KINDS)
        .allSatisfy(
            kind -> {
              assertThat(kind.files()).allMatch(name -> name.matches("[a-z][a-z0-9.-]*"));
              assertThat(own(kind)).filteredOn(name -> name.endsWith(".json")).hasSize(1);
              assertThat(kind.keys()).matches("[A-Za-z ]+");
            });
  }
}
