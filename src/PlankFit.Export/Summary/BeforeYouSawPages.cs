using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>All that was found on one page, or as few as it takes: under a head for each rank what it is about to the left, what is wrong and what to do to the right.</summary>
public static class BeforeYouSawPages
{
    private const double Size = Letters.Bench;
    private const double GapMm = 1.4;

    /// <summary>Of the width, for what a finding is about.</summary>
    private const double Left = 0.24;

    public static ImmutableArray<Drawing> Of(BottomPlan plan)
    {
        var format = SheetFormat.BenchStanding(plan.Job);
        Box inside = Frame.Inside(format).Within(3);
        var block = new TitleBlock(
            "Before you saw",
            "all that was found, what costs most first",
            "no drawing",
            null,
            Cautions.Saw
        )
        {
            Arrow = "",
        };
        var pages = new List<SheetPage>();
        foreach (
            Entry[] entries in Pages([.. Entries(BeforeYouSaw.All(plan), inside.Width)], inside)
        )
        {
            pages.Add(new(format, block, (pad, box) => Draw(pad, box.Within(3), entries)));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>A finding, with the head of its rank where it is the first.</summary>
    private sealed record Entry(Finding Finding, bool First, double Mm);

    private static IEnumerable<Entry> Entries(ImmutableArray<Finding> findings, double width) =>
        findings.Select(
            (f, i) =>
            {
                bool first = i == 0 || findings[i - 1].Rank != f.Rank;
                int lines = Math.Max(
                    Letters.Wrap(f.Where, Size, WhereMm(width), true).Count,
                    Letters.Wrap(f.Message, Size, WordsMm(width)).Count
                );
                return new Entry(
                    f,
                    first,
                    (lines * Size * Letters.Leading) + GapMm + (first ? HeadMm(f.Rank, width) : 0)
                );
            }
        );

    private static IEnumerable<Entry[]> Pages(Entry[] entries, Box inside)
    {
        int from = 0;
        do
        {
            int to = from;
            double room = inside.Height;
            while (to < entries.Length && (to == from || room >= entries[to].Mm))
            {
                room -= entries[to++].Mm;
            }

            yield return entries[from..to];
            from = to;
        } while (from < entries.Length);
    }

    private static void Draw(SheetCanvas pad, Box box, Entry[] entries)
    {
        double top = box.Top;
        if (entries.Length == 0)
        {
            pad.Paragraph(box.Left, top, box.Width, "Nothing was found.", Size);
        }

        foreach ((Finding finding, bool first, double mm) in entries)
        {
            double at = top;
            if (first)
            {
                pad.Text(
                    box.Left,
                    at - Letters.Heading,
                    FindingsText.Of(finding.Rank),
                    Letters.Heading,
                    bold: true
                );
                pad.Paragraph(
                    box.Left,
                    at - (Letters.Heading * Letters.Leading),
                    box.Width,
                    Meant(finding.Rank),
                    Size
                );
                at -= HeadMm(finding.Rank, box.Width);
                pad.Line(box.Left, at + GapMm, box.Right, at + GapMm, Pens.Frame);
            }

            pad.Paragraph(box.Left, at, WhereMm(box.Width), finding.Where, Size, true);
            pad.Paragraph(
                box.Left + (Left * box.Width),
                at,
                WordsMm(box.Width),
                finding.Message,
                Size
            );
            top -= mm;
        }
    }

    private static double WhereMm(double width) => (Left * width) - 3;

    private static double WordsMm(double width) => (1 - Left) * width;

    private static double HeadMm(Rank rank, double width) =>
        (Letters.Heading * Letters.Leading)
        + (Letters.Wrap(Meant(rank), Size, width).Count * Size * Letters.Leading)
        + (2 * GapMm);

    private static string Meant(Rank rank) =>
        rank switch
        {
            Rank.DoNotSaw =>
                "What is sawn by these is spoiled. Nothing that they name is sawn before they are mended and the job is laid again.",
            Rank.BuyFirst =>
                "Nothing is spoiled by these: the planks that they name have no board in the stock. Buy what they ask for, add it to the stock and lay the job again; mark first what is sawn by then.",
            Rank.SawAfter => "See to these first: look, measure or mend, then saw what they name.",
            _ => "Nothing is spoiled by these.",
        };
}
