package propcap.web;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.report.SharedPage;
import propcap.report.Style;
import propcap.results.Answer;
import propcap.web.desk.Desk;
import propcap.web.desk.Folder;
import propcap.web.desk.Readings;
import propcap.web.question.AskedQuestions;
import propcap.web.question.Outlook;
import propcap.web.question.Questions;
import propcap.web.question.Studies;
import propcap.web.question.Study;
import propcap.web.request.RefusedException;
import propcap.web.request.Reply;
import propcap.web.request.RequestFields;
import propcap.web.typed.TypedCells;

/** What the page asks of the server, each request by its path. */
final class Page implements AutoCloseable {
  private static final Pattern DOCUMENT =
      Pattern.compile("answer/(forecast|[0-9]{1,18})/([a-z-]{1,40}\\.[a-z]{2,4})");

  private static final int LOOK_SECONDS = 2;

  private final Desk desk;
  private final String version;
  private final Events events = new Events();
  private final Studies studies = new Studies(this::tellStudy);
  private final Outlook outlook;
  private final AskedQuestions asks;
  private final ScheduledExecutorService watch =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "watch");
            thread.setDaemon(true);
            return thread;
          });

  Page(Desk desk, String version, int springs) {
    this.desk = desk;
    this.version = version;
    this.outlook = new Outlook(desk, studies, springs, () -> tell("forecast"));
    this.asks = new AskedQuestions(desk, studies);
    var unused =
        watch.scheduleWithFixedDelay(this::look, LOOK_SECONDS, LOOK_SECONDS, TimeUnit.SECONDS);
  }

  /** Files that others change while the page is open are noticed. */
  private void look() {
    try {
      if (desk.look()) {
        tell("state");
      }
    } catch (IOException e) {
      // It may be there again at the next look.
    }
  }

  private void tell(String what) {
    JsonObject news = new JsonObject();
    news.addProperty("version", desk.version());
    events.tell(what, news);
  }

  private void tellStudy(Study study) {
    events.tell("study", json(study));
  }

  private static JsonObject json(Study study) {
    JsonObject json = new JsonObject();
    json.addProperty("id", study.id());
    json.addProperty("name", study.name());
    json.addProperty("stage", study.stage().word());
    json.addProperty("share", study.share());
    json.addProperty("trouble", study.trouble());
    return json;
  }

  /** Each once, though several scenarios have it. */
  private static List<FieldFault> told(List<Desk.NewFault> faults) {
    return faults.stream()
        .map(each -> FieldFault.of(each.fault(), each.written()))
        .distinct()
        .toList();
  }

  void listen(HttpExchange page) throws IOException {
    events.listen(page);
  }

  Reply get(String path, @Nullable String query) throws IOException, RefusedException {
    String name = path.substring(1);
    if (OwnFiles.has(name)) {
      return OwnFiles.reply(name);
    }
    Matcher document = DOCUMENT.matcher(name);
    if (document.matches()) {
      return document(document.group(1), document.group(2));
    }
    return switch (path) {
      case "/report.css" -> Reply.file("report.css", Style.css());
      case "/api/state" -> state(value(query, "file"));
      case "/api/forecast" -> Reply.json(new Gson().toJsonTree(outlook.inShort()));
      case "/api/section" -> Reply.html(outlook.section(value(query, "id")));
      case "/api/studies" -> studies();
      case "/api/crops" -> Reply.json(BroughtCrops.json());
      case "/api/answer" ->
          Reply.json(new Gson().toJsonTree(asks.answer(number(value(query, "id")))));
      default -> throw new RefusedException(404, "there is nothing at " + path);
    };
  }

  /** A file of an answer, or of the forecast, to be read or kept without being saved. */
  private Reply document(String of, String name) throws RefusedException {
    return of.equals("forecast")
        ? outlook.file(name, version)
        : asks.file(number(of), name, version);
  }

  /** What may be read from elsewhere: the list of all, and each of their files. */
  Reply shared(String path) throws RefusedException {
    Matcher document = DOCUMENT.matcher(path);
    if (document.matches()) {
      return document(document.group(1), document.group(2));
    }
    if (!path.isEmpty()) {
      throw new RefusedException(404, "nothing is here");
    }
    List<SharedPage.Entry> entries = new ArrayList<>();
    outlook
        .shown()
        .ifPresent(forecast -> entries.add(entry("The forecast", forecast, "answer/forecast")));
    asks.all()
        .forEach(
            each ->
                entries.add(
                    entry(
                        Questions.title(each.getValue().kind().word()),
                        each.getValue(),
                        "answer/" + each.getKey())));
    return Reply.document("shared.html", new SharedPage(desk.name(), entries).html());
  }

  private static SharedPage.Entry entry(String title, Answer answer, String at) {
    return new SharedPage.Entry(title, answer.headlines().lines(), at, answer.kind().files());
  }

  /** The value of a key, decoded once its end is known: a file's name may hold an ampersand. */
  private static String value(@Nullable String query, String key) {
    return query == null
        ? ""
        : Arrays.stream(query.split("&", -1))
            .filter(each -> each.startsWith(key + "="))
            .map(
                each -> URLDecoder.decode(each.substring(key.length() + 1), StandardCharsets.UTF_8))
            .findFirst()
            .orElse("");
  }

  private static long number(String text) throws RefusedException {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw RefusedException.bad("'" + text + "' is no number");
    }
  }

  private Reply state(String file) throws IOException, RefusedException {
    JsonObject json = State.of(desk.view(file));
    json.addProperty("mends", mends());
    return Reply.json(json);
  }

  /** How many things are to mend in all that stands side by side, each counted once. */
  private long mends() {
    return desk.scenarios().stream()
        .flatMap(each -> desk.reading(each).faults().stream())
        .distinct()
        .count();
  }

  private Reply studies() {
    JsonArray all = new JsonArray();
    studies.all().forEach(s -> all.add(json(s)));
    return Reply.json(all);
  }

  Reply post(String path, RequestFields asked) throws IOException, RefusedException {
    String file = asked.text("file");
    JsonObject done = new JsonObject();
    switch (path) {
      case "/api/edit" -> {
        Edits edits = new Edits(desk.folder(), asked.each("edits"));
        if (edits.areRows()) {
          var faults = told(desk.log(file, asked.number("version"), edits::write));
          done.add("faults", new Gson().toJsonTree(faults));
        } else {
          desk.change(file, asked.number("version"), edits::write);
        }
        // It need not wait until the page has looked at the change and asks for it.
        outlook.ask(file);
      }
      case "/api/paste" -> done = paste(file, asked);
      case "/api/undo" -> desk.undo();
      case "/api/redo" -> desk.redo();
      case "/api/discard" -> desk.discard();
      case "/api/take-disk" -> desk.takeDisk();
      case "/api/day" -> desk.choose(day(asked));
      case "/api/save" -> done = told(desk.save(asked.isTrue("over")));
      case "/api/save-as" -> done = told(desk.saveAs(asked.text("name")));
      case "/api/what-if" -> done.addProperty("file", desk.addWhatIf(asked.text("title")));
      case "/api/open-beside" -> done.addProperty("file", desk.openBeside(asked.text("name")));
      case "/api/close-beside" -> desk.closeBeside(asked.text("name"));
      case "/api/outlook" -> outlook.ask(file);
      case "/api/ask" -> done = asks.ask(asked);
      case "/api/stop" -> studies.stop(asked.number("id"));
      case "/api/answer/save" -> done.add("written", saved(asks.save(asked.number("id"), version)));
      case "/api/answer/take" -> asks.take(asked.number("id"));
      case "/api/answer/beside" -> done.addProperty("file", asks.putBeside(asked.number("id")));
      case "/api/forecast/save" -> done.add("written", saved(outlook.save(version)));
      default -> throw new RefusedException(404, "there is nothing at " + path);
    }
    done.addProperty("version", desk.version());
    tell("state");
    return Reply.json(done);
  }

  /**
   * Looks at what is pasted, and writes it where {@code write} says so: {@code right} where nothing
   * is wrong or left out, {@code seen} where the grower has seen it.
   */
  private JsonObject paste(String file, RequestFields asked) throws IOException, RefusedException {
    Pasting pasting = new Pasting(desk.view(file).reading().written(), asked);
    long seen = asked.number("version");
    List<FieldFault> others =
        pasting.isClear() ? pasting.blame(told(desk.trial(file, seen, pasting::write))) : List.of();
    boolean isSeen = asked.text("write").equals("seen") && pasting.isClear();
    boolean isRight = asked.text("write").equals("right") && pasting.isRight() && others.isEmpty();
    if (isSeen || isRight) {
      desk.change(file, seen, pasting::write);
      outlook.ask(file);
    }
    JsonObject told = pasting.told(others);
    told.addProperty("isWritten", isSeen || isRight);
    return told;
  }

  /** A day of the season, the page's own where none is said, the clock's or the winter before. */
  private Readings.Day day(RequestFields asked) throws IOException, RefusedException {
    TypedCells typed =
        new TypedCells(Readings.season(desk.view("").reading().written()).orElse(null));
    LocalDate chosen = asked.text("day").isBlank() ? null : typed.date(asked, "day");
    return new Readings.Day(
        chosen, asked.isTrue("clock"), asked.isTrue("winter"), asked.isTrue("overfull"));
  }

  private static JsonObject told(Folder.Saved saved) {
    JsonObject done = new JsonObject();
    done.add("written", Reply.words(saved.written()));
    done.add("kept", Reply.words(saved.kept()));
    return done;
  }

  private JsonArray saved(List<Path> files) {
    return Reply.words(files.stream().map(desk.folder()::name).toList());
  }

  @Override
  public void close() {
    watch.shutdownNow();
    studies.close();
    events.close();
  }
}
