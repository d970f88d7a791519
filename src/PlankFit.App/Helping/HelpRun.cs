using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Draughting.Skia;
using PlankFit.Reading.Help;
using PlankFit.Reading.Text;

namespace PlankFit.App.Helping;

/// <summary>Tells how a thing is done, and what may stand in a job file for it.</summary>
public static class HelpRun
{
    /// <summary>All tables with all their keys.</summary>
    private const string Keys = "keys";

    /// <param name="name">A topic, a table or a key; null for the list of topics.</param>
    public static RunReport Run(string? name)
    {
        if (Told(name) is { } lines)
        {
            return new(ExitCode.Done, [], [], string.Join('\n', lines) + "\n");
        }

        ImmutableArray<string> near = Nearest(name!);
        string meant = near.IsEmpty
            ? ";"
            : $"; did you mean {string.Join(" or ", near.Select(Quoted.Of))}?";
        return new(
            ExitCode.WrongUsage,
            [],
            [
                $"plankfit: there is no topic {Quoted.Of(name!)}, and a job has no table and no key of that name{meant} plankfit help lists the topics, plankfit help {Keys} all keys.",
            ]
        );
    }

    /// <summary>All topics as a book.</summary>
    /// <param name="file">Is written whole or not at all; one that is there already is not replaced.</param>
    public static RunReport Manual(string file)
    {
        string path = Path.GetFullPath(file),
            half = path + ".writing";
        try
        {
            if (Path.Exists(path))
            {
                return CouldNot($"{file} is there already: move it away, or name another file");
            }

            using (FileStream stream = new(half, FileMode.Create, FileAccess.Write))
            {
                PdfWriter.Write(stream, ManualPages.Of(Topic.All), "PlankFit");
            }

            File.Move(half, path, false);
            return new(ExitCode.Done, [], [$"{file}: {Topic.All.Length} topics."]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return CouldNot($"{file} could not be written: {e.Message}");
        }
        finally
        {
            if (File.Exists(half))
            {
                File.Delete(half);
            }
        }
    }

    private static RunReport CouldNot(string why) =>
        new(ExitCode.CouldNotWrite, [], [$"plankfit: {why}."]);

    private static IEnumerable<string>? Told(string? name) =>
        name is null ? Overview()
        : name.Trim().Equals(Keys, StringComparison.OrdinalIgnoreCase) ? KeyHelp.Of(null)
        : Topic.Find(name) is { } topic ? Whole(topic)
        : KeyHelp.Of(name);

    private static IEnumerable<string> Whole(Topic topic) =>
        KeyHelp.Of(topic.Name) is { } keys
            ? [.. TopicLines.Of(topic), "", .. keys]
            : TopicLines.Of(topic);

    private static IEnumerable<string> Overview()
    {
        yield return "plankfit help TOPIC tells how a thing is done, with an example and its keys:";
        foreach (Topic topic in Topic.All)
        {
            yield return $"  {topic.Name, -12} {topic.Title}";
        }

        yield return "";
        yield return "plankfit help layer tells of one table of the job file, plankfit help layer.width of one key,";
        yield return $"plankfit help {Keys} of all tables with all their keys. The tables:";
        string tables = string.Join(", ", KeyPath.All.Where(k => k.IsHeaded).Select(k => k.Path));
        foreach (string line in TextLines.Of(tables, 96))
        {
            yield return "  " + line;
        }

        yield return "";
        yield return "plankfit help --manual FILE.pdf writes all topics as a book.";
    }

    private static ImmutableArray<string> Nearest(string name) =>
        NearestName.Of(name.Trim(), Topic.All.Select(t => t.Name)) is { } topic
            ? [topic, .. KeyHelp.Nearest(name).Where(k => k != topic).Take(2)]
            : KeyHelp.Nearest(name);
}
