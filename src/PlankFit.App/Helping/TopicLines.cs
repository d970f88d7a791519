using PlankFit.Reading.Help;

namespace PlankFit.App.Helping;

/// <summary>A topic for the terminal.</summary>
internal static class TopicLines
{
    private const int Width = 100;

    public static IEnumerable<string> Of(Topic topic)
    {
        yield return topic.Title;
        TopicBlock? before = null;
        foreach (TopicBlock block in TopicBlock.Of(topic.Text))
        {
            // Items stand together.
            if (block.Kind != TopicBlock.Kinds.Item || before?.Kind != TopicBlock.Kinds.Item)
            {
                yield return "";
            }

            foreach (string line in Lines(block))
            {
                yield return line;
            }

            before = block;
        }
    }

    private static IEnumerable<string> Lines(TopicBlock block) =>
        block.Kind switch
        {
            TopicBlock.Kinds.File => block.Lines.Select(l => ("    " + l).TrimEnd()),
            TopicBlock.Kinds.Item => TextLines
                .Of(block.Lines[0], Width - 3)
                .Select((l, i) => i == 0 ? l : "  " + l),
            _ => TextLines.Of(block.Lines[0], Width),
        };
}
