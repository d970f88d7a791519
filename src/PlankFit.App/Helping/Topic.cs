using System.Collections.Immutable;
using System.Reflection;

namespace PlankFit.App.Helping;

/// <summary>A part of the manual: how one thing is done, with an example of the job's tables for it.</summary>
/// <param name="Name">As it is asked for; where the job has a table of that name it is about that.</param>
/// <param name="Title">In a line.</param>
/// <param name="Text">Paragraphs, items that begin with a hyphen or a number, and blocks of a file indented by four; ** and ` about words.</param>
public sealed record Topic(string Name, string Title, string Text)
{
    /// <summary>In the order of the work.</summary>
    private static readonly ImmutableArray<string> Names =
    [
        "hull",
        "check",
        "files",
        "panel",
        "keel",
        "behind",
        "joints",
        "timber",
        "fastenings",
        "setting-up",
        "trust",
        "sheathing",
        "glue",
        "structure",
        "nest",
        "compare",
        "as-built",
        "words",
        "cautions",
    ];

    private static readonly Lazy<ImmutableArray<Topic>> Read = new(() => [.. Names.Select(Of)]);

    public static ImmutableArray<Topic> All => Read.Value;

    /// <summary>By its name as somebody writes it; null where there is none.</summary>
    public static Topic? Find(string name) =>
        All.FirstOrDefault(t => t.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));

    private static Topic Of(string name)
    {
        using Stream stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream($"{name}.md")
            ?? throw new InvalidOperationException($"the program lacks its text about {name}");
        using var reader = new StreamReader(stream);
        string text = reader.ReadToEnd().ReplaceLineEndings("\n");
        int end = text.IndexOf('\n', StringComparison.Ordinal);
        return new(name, text[2..end].Trim(), text[end..].Trim('\n'));
    }
}
