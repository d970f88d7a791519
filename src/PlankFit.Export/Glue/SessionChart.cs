using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>Sessions as a chart, one below the other, each with its hours along it and as high as its words and its bars want.</summary>
internal static class SessionChart
{
    private const double NamesMm = 50;
    private const double GapMm = 4;

    public static IEnumerable<SheetPage> Pages(Job job, GluePlan glue)
    {
        var format = SheetFormat.Bench(job);
        Box inside = Frame.Inside(format).Within(3);
        string[] words =
        [
            "Each bar from the beginning of mixing until its last plank is down, the thick part until the pot is empty; starboard (S) above, port (P) below. Where bars are too short for their names, those of a row stand at its end.",
            .. GlueWords.NotPlanned(glue),
        ];
        double room =
                inside.Height
                - words.Sum(w => Lines(w, Letters.Bench, inside.Width) * LineMm(Letters.Bench))
                - 2,
            left = 0;
        Func<GlueSession, SessionClamps> clamps = ClampCounts.Of(glue);
        List<List<Row>> pages = [];
        foreach (GlueSession session in glue.Sessions)
        {
            var row = Row.Of(
                session,
                GlueWords.HeldBy(glue, clamps(session)),
                job.Units,
                inside.Width - NamesMm,
                room
            );
            if (pages.Count == 0 || row.HeightMm > left)
            {
                pages.Add([]);
                left = room;
            }

            pages[^1].Add(row);
            left -= row.HeightMm;
        }

        return pages.Select(page => new SheetPage(
            format,
            GlueSheets.Block("Gluing: chart of sessions", "one below the other, a bar a batch"),
            (pad, box) => Page(pad, box.Within(3), page, words)
        ));
    }

    private static void Page(SheetCanvas pad, Box box, List<Row> rows, string[] words)
    {
        double top = box.Top;
        foreach (string paragraph in words)
        {
            top = pad.Paragraph(box.Left, top, box.Width, paragraph, Letters.Bench);
        }

        top -= 2;
        foreach (Row row in rows)
        {
            Session(pad, new(box.Left, top - row.HeightMm + GapMm, box.Right, top), row);
            top -= row.HeightMm;
        }

        pad.BreakAroundLetters(Layers.Marks);
    }

    private static void Session(SheetCanvas pad, Box box, Row row)
    {
        pad.Text(
            box.Left,
            box.Top - Letters.Heading,
            $"{row.Session.Number}  {GlueWords.When(row.Session.From)}",
            Letters.Heading,
            bold: true
        );
        double y = box.Top - Letters.Heading - 2.5;
        foreach (string line in row.Words)
        {
            y = pad.Paragraph(box.Left, y, NamesMm - 6, line, Letters.Bench);
        }

        SessionBars.Draw(pad, box with { Left = box.Left + NamesMm }, row.Bars);
    }

    private static int Lines(string text, double size, double width) =>
        Letters.Wrap(text, size, width).Count;

    private static double LineMm(double size) => size * Letters.Leading;

    /// <summary>A session with what is written beside it.</summary>
    private sealed record Row(
        GlueSession Session,
        ImmutableArray<string> Words,
        SessionBars Bars,
        double HeightMm
    )
    {
        public static Row Of(
            GlueSession session,
            string held,
            LengthUnit unit,
            double width,
            double most
        )
        {
            ImmutableArray<string> words =
            [
                session.Layer,
                $"{GlueWords.WhatDone(session)}, {GlueWords.Batches(session.Batches.Length)}",
                .. held.Length > 0 ? new[] { held } : [],
                $"{GlueWords.Temperature(session.Batches.Min(b => b.Celsius), unit)} to {GlueWords.Temperature(session.Batches.Max(b => b.Celsius), unit)}",
            ];
            double told =
                Letters.Heading
                + 2.5
                + words.Sum(w => Lines(w, Letters.Bench, NamesMm - 6) * LineMm(Letters.Bench));
            var bars = SessionBars.Of(session, width, most - GapMm);
            return new(session, words, bars, Math.Max(told, bars.HeightMm) + GapMm);
        }
    }
}
