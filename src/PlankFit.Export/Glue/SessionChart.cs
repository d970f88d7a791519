using System.Globalization;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>Sessions as a chart: a row a shift, its hours along it, a bar a batch from mixing until the last is down.</summary>
internal static class SessionChart
{
    private const double RowMm = 30;
    private const double NamesMm = 46;
    private const double HourMm = 4;

    public static IEnumerable<SheetPage> Pages(Job job, GluePlan glue)
    {
        var format = SheetFormat.Bench(job);
        int rows = Math.Max(
            1,
            (int)(
                (Frame.Inside(format).Within(3).Height - (glue.NotPlanned.IsEmpty ? 14 : 24))
                / RowMm
            )
        );
        foreach (GlueSession[] page in glue.Sessions.Chunk(rows))
        {
            yield return new(
                format,
                GlueSheets.Block("Gluing: chart of sessions", "a row a session, a bar a batch"),
                (pad, inside) =>
                    Page(
                        pad,
                        inside.Within(3),
                        job.Units,
                        page,
                        [
                            "Each bar from the beginning of mixing until its last plank is down, the thick part until the pot is empty; starboard above, port below.",
                            .. GlueWords.NotPlanned(glue),
                        ]
                    )
            );
        }
    }

    private static void Page(
        SheetCanvas pad,
        Box box,
        LengthUnit unit,
        GlueSession[] sessions,
        string[] words
    )
    {
        double top = box.Top;
        foreach (string paragraph in words)
        {
            top = pad.Paragraph(box.Left, top, box.Width, paragraph, Letters.Bench);
        }

        for (int i = 0; i < sessions.Length; i++)
        {
            double head = top - 2 - (i * RowMm);
            Session(pad, new(box.Left, head - RowMm + 3, box.Right, head), unit, sessions[i]);
        }

        pad.BreakAroundLetters(Layers.Marks);
    }

    private static void Session(SheetCanvas pad, Box row, LengthUnit unit, GlueSession session)
    {
        pad.Text(
            row.Left,
            row.Top - Letters.Heading,
            $"{session.Number}  {GlueWords.When(session.From)}",
            Letters.Heading,
            bold: true
        );
        string what =
            session.Planks > 0 ? PlanWords.Count(session.Planks, "plank")
            : session.IsCoat ? "coat"
            : "cloth";
        double y = row.Top - Letters.Heading - 5;
        foreach (
            string line in new[]
            {
                session.Layer,
                $"{what}, {PlanWords.Count(session.Batches.Length, "batch").Replace("batchs", "batches")}",
                $"{GlueWords.Temperature(session.Batches.Min(b => b.Celsius), unit)} to {GlueWords.Temperature(session.Batches.Max(b => b.Celsius), unit)}",
            }
        )
        {
            pad.Text(
                row.Left,
                y,
                Letters.Shortened(line, Letters.Bench, NamesMm - 3),
                Letters.Bench
            );
            y -= Letters.Bench * Letters.Leading;
        }

        double from = 60 * Math.Floor(session.From / 60),
            to = 60 * Math.Ceiling(Math.Max(session.ShiftTo, session.To) / 60);
        Box plot = row with { Left = row.Left + NamesMm, Bottom = row.Bottom + HourMm };
        double At(double minute) => plot.Left + ((minute - from) / (to - from) * plot.Width);
        for (double hour = from; hour <= to; hour += 60)
        {
            pad.Line(At(hour), plot.Bottom, At(hour), plot.Top, Pens.Rule);
            pad.Text(
                new(At(hour), plot.Bottom - HourMm + 0.8),
                Name(hour),
                Letters.Small,
                hour == to ? Anchor.BaselineRight
                    : hour == from ? Anchor.BaselineLeft
                    : Anchor.BaselineCentre
            );
        }

        foreach (IGrouping<Side, GlueBatch> side in session.Batches.GroupBy(b => b.Side))
        {
            Box half = plot.Row(side.Key == Side.Starboard ? 0 : 1, 2).Within(0.6);
            Bars(pad, half, At, [.. side]);
        }
    }

    /// <summary>Bars that run at one time lie in lanes of their own.</summary>
    private static void Bars(SheetCanvas pad, Box box, Func<double, double> at, GlueBatch[] batches)
    {
        List<double> lanes = [];
        int[] lane =
        [
            .. batches.Select(b =>
            {
                int free = lanes.FindIndex(end => end <= b.MixAt);
                if (free < 0)
                {
                    lanes.Add(0);
                    free = lanes.Count - 1;
                }

                lanes[free] = b.Clocks.DownAt;
                return free;
            }),
        ];
        for (int i = 0; i < batches.Length; i++)
        {
            GlueBatch batch = batches[i];
            Box row = box.Row(lane[i], lanes.Count);
            double middle = row.Middle.Y,
                left = at(batch.MixAt),
                right = at(batch.Clocks.DownAt),
                outAt = at(batch.Clocks.OutAt);
            double half = Math.Min(1.6, row.Height / 2.4);
            Box bar = new(left, middle - half, right, middle + half);
            pad.Rectangle(bar, Pens.Measure);
            pad.Rectangle(bar with { Right = outAt }, Pens.Cut);
            double size = Letters.Small;
            if (Letters.Width(batch.Name, size, true) < right - outAt - 1 && 2 * half > size)
            {
                pad.Text(
                    new((outAt + right) / 2, middle - (size / 2)),
                    batch.Name,
                    size,
                    Anchor.BaselineCentre,
                    true
                );
            }
        }
    }

    private static string Name(double minute) =>
        ((int)(minute % DayTemperature.Day) / 60).ToString("00", CultureInfo.InvariantCulture);
}
