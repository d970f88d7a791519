using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Draughting.Layout;

namespace PlankFit.App.Helping;

/// <summary>The topics as pages to print: a page of contents, and each topic from the head of a page of its own.</summary>
internal static class ManualPages
{
    private const double WidthMm = 210;
    private const double HeightMm = 297;
    private const double MarginMm = 18;
    private const double TextMm = 2.2;
    private const double HeadMm = 5;
    private const double GapMm = 2.2;

    /// <summary>Of a line of a file: what stands in it, and from there on what is said of it.</summary>
    private const double RemarkMm = 62;
    private const double IndentMm = 5;
    private const double LineMm = TextMm * Letters.Leading;
    private const double InsideMm = WidthMm - (2 * MarginMm);

    public static ImmutableArray<Drawing> Of(ImmutableArray<Topic> topics)
    {
        List<SheetCanvas> pages = [new SheetCanvas()];
        List<(Topic Topic, int Page)> contents = [];
        foreach (Topic topic in topics)
        {
            pages.Add(new SheetCanvas());
            contents.Add((topic, pages.Count));
            Write(topic, pages);
        }

        Contents(pages[0], contents);
        return
        [
            .. pages.Select(
                (pad, i) =>
                {
                    pad.Text(
                        WidthMm - MarginMm,
                        MarginMm - 8,
                        string.Create(CultureInfo.InvariantCulture, $"{i + 1}"),
                        TextMm,
                        Anchor.BaselineRight
                    );
                    return pad.Done("PlankFit", WidthMm, HeightMm);
                }
            ),
        ];
    }

    private static void Contents(SheetCanvas pad, List<(Topic Topic, int Page)> contents)
    {
        double y = HeightMm - MarginMm - HeadMm;
        pad.Text(MarginMm, y, "PlankFit", HeadMm, bold: true);
        y -= 2 * HeadMm;
        foreach ((Topic topic, int page) in contents)
        {
            pad.Text(MarginMm, y, topic.Title, Letters.Bench);
            pad.Text(
                WidthMm - MarginMm,
                y,
                string.Create(CultureInfo.InvariantCulture, $"{page}"),
                Letters.Bench,
                Anchor.BaselineRight
            );
            y -= Letters.Bench * 2.4;
        }
    }

    private static void Write(Topic topic, List<SheetCanvas> pages)
    {
        double y = HeightMm - MarginMm - HeadMm;
        y = pages[^1].Paragraph(MarginMm, y + HeadMm, InsideMm, topic.Title, HeadMm, true);
        foreach (TopicBlock block in TopicBlock.Of(topic.Text))
        {
            y -= block.Kind == TopicBlock.Kinds.Item ? GapMm / 2 : GapMm;
            foreach (Line line in Lines(block))
            {
                if (y - LineMm < MarginMm)
                {
                    pages.Add(new SheetCanvas());
                    y = HeightMm - MarginMm;
                }

                y -= LineMm;
                pages[^1].Text(MarginMm + line.IndentMm, y, line.Text, TextMm);
                if (line.Remark.Length > 0)
                {
                    pages[^1].Text(MarginMm + IndentMm + RemarkMm, y, line.Remark, TextMm);
                }
            }
        }
    }

    private readonly record struct Line(double IndentMm, string Text, string Remark);

    private static IEnumerable<Line> Lines(TopicBlock block) =>
        block.Kind switch
        {
            TopicBlock.Kinds.File => block.Lines.SelectMany(OfFile),
            TopicBlock.Kinds.Item => Letters
                .Wrap(block.Lines[0], TextMm, InsideMm - IndentMm)
                .Select((l, i) => new Line(i == 0 ? 0 : IndentMm / 2, l, "")),
            _ => Letters.Wrap(block.Lines[0], TextMm, InsideMm).Select(l => new Line(0, l, "")),
        };

    /// <summary>What is said of a line stands in a column of its own, and goes on below where it is long.</summary>
    private static IEnumerable<Line> OfFile(string line)
    {
        int at = line.StartsWith('#') ? -1 : line.IndexOf(" #", StringComparison.Ordinal);
        string text = at < 0 ? line : line[..at].TrimEnd(),
            remark = at < 0 ? "" : line[(at + 1)..].Trim();
        bool beside = Letters.Width(text, TextMm) < RemarkMm - 2;
        IReadOnlyList<string> texts = Letters.Wrap(
                text,
                TextMm,
                beside ? RemarkMm : InsideMm - IndentMm
            ),
            remarks = remark.Length == 0
                ? []
                : Letters.Wrap(remark, TextMm, InsideMm - IndentMm - RemarkMm);
        int before = beside || remarks.Count == 0 ? 0 : texts.Count;
        for (int i = 0; i < Math.Max(Math.Max(1, texts.Count), before + remarks.Count); i++)
        {
            yield return new(
                IndentMm,
                texts.ElementAtOrDefault(i) ?? "",
                remarks.ElementAtOrDefault(i - before) ?? ""
            );
        }
    }
}
