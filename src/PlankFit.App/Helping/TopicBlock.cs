using System.Collections.Immutable;

namespace PlankFit.App.Helping;

/// <summary>A piece of a topic's text.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Lines">A paragraph or an item in one line, a file's block line by line, without their indents.</param>
internal sealed record TopicBlock(TopicBlock.Kinds Kind, ImmutableArray<string> Lines)
{
    internal enum Kinds
    {
        Paragraph,
        Item,
        File,
    }

    private const string Indent = "    ";

    public static ImmutableArray<TopicBlock> Of(string text)
    {
        ImmutableArray<TopicBlock>.Builder blocks = ImmutableArray.CreateBuilder<TopicBlock>();
        List<string> file = [];
        void Close()
        {
            while (file.Count > 0 && file[^1].Length == 0)
            {
                file.RemoveAt(file.Count - 1);
            }

            if (file.Count > 0)
            {
                blocks.Add(new(Kinds.File, [.. file]));
                file.Clear();
            }
        }

        foreach (string line in text.Split('\n'))
        {
            if (line.StartsWith(Indent, StringComparison.Ordinal))
            {
                file.Add(line[Indent.Length..]);
            }
            else if (line.Length == 0)
            {
                // Within a block an empty line stays; at its end it is dropped.
                if (file.Count > 0)
                {
                    file.Add("");
                }
            }
            else
            {
                Close();
                blocks.Add(new(IsItem(line) ? Kinds.Item : Kinds.Paragraph, [Plain(line)]));
            }
        }

        Close();
        return blocks.ToImmutable();
    }

    private static bool IsItem(string line) =>
        line.StartsWith("- ", StringComparison.Ordinal)
        || (char.IsAsciiDigit(line[0]) && line[1..].StartsWith(". ", StringComparison.Ordinal));

    private static string Plain(string line) =>
        line.Replace("**", "", StringComparison.Ordinal).Replace("`", "", StringComparison.Ordinal);
}
