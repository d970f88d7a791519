using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lines;

/// <summary>
/// How each row of the table bends along the hull: its divided second differences, one small chart a row. A value that does not lie fair stands out as a
/// spike with its neighbours thrown the other way; what the check suspects is ringed and named.
/// </summary>
public static class CurvatureCharts
{
    private const int Columns = 2;
    private const int Rows = 4;

    /// <summary>What the note below the charts takes.</summary>
    private const double NoteMm = 14;

    private const string Scale =
        "How sharply each row bends at each station: the height off the middle line is one over the radius there. Every chart has a scale of its own, so look at its radii: at a grey line the row bends to the radius "
        + "written on it, half as high to twice that radius, and on the middle line it is straight. Above the line it curves towards greater figures, below towards lesser. "
        + "A zig-zag by the last figure of the table is its rounding.";

    /// <summary>Behind the chart.</summary>
    private static readonly Pen Mark = new(0.18, 0.7);

    public static ImmutableArray<Drawing> Of(Job job, FairnessReport report)
    {
        var format = SheetFormat.Wall(job);
        var block = new TitleBlock(
            "Curvature of each line",
            "second differences; ringed: look at the source"
                + (
                    job.WrittenIn == LengthUnit.FeetInchesEighths
                        ? $". {LengthText.EighthsKey}"
                        : ""
                ),
            "charts not to one scale",
            new Vec2(-1, 0),
            Cautions.Overview
        );
        IEnumerable<JudgedRow[]> pages = report.Rows.Chunk(Columns * Rows).DefaultIfEmpty([]);
        return SheetPage.Numbered(
            job,
            [
                .. pages.Select(rows => new SheetPage(
                    format,
                    block,
                    (pad, inside) => Page(pad, inside, rows, report.TapeTheEnds, job)
                )),
            ]
        );
    }

    private static void Page(SheetCanvas pad, Box inside, JudgedRow[] rows, string? ends, Job job)
    {
        foreach (string note in new[] { ends, Scale }.OfType<string>())
        {
            pad.Paragraph(
                inside.Left + 6,
                inside.Bottom + NoteMm - 2,
                inside.Width - 12,
                note,
                Letters.Bench
            );
            inside = inside with { Bottom = inside.Bottom + NoteMm };
        }

        int tall = Math.Max(1, (rows.Length + Columns - 1) / Columns);
        for (int i = 0; i < rows.Length; i++)
        {
            Box row = inside.Row(i / Columns, Math.Max(tall, 2));
            double width = row.Width / Columns,
                left = row.Left + ((i % Columns) * width);
            Chart(pad, new Box(left, row.Bottom, left + width, row.Top).Within(6), rows[i], job);
        }
    }

    private static void Chart(SheetCanvas pad, Box box, JudgedRow judged, Job job)
    {
        OffsetRow row = judged.Row;
        ImmutableArray<double> d = judged.SecondDifferences;
        pad.Text(box.Left, box.Top - Letters.Bench, row.Name, Letters.Bench, bold: true);
        double most = d.IsEmpty ? 0 : d.Max(Math.Abs);
        string sharpest =
            most > 1e-9
                ? $"sharpest bend {PlankWords.Radius(1 / most, job.Units)} radius"
                : "straight";
        pad.Text(box.Right, box.Top - Letters.Bench, sharpest, Letters.Small, Anchor.BaselineRight);
        Box plot = new(box.Left, box.Bottom + 6, box.Right, box.Top - 14);
        double from = row.XMm[0],
            to = row.XMm[^1],
            scale = most > 0 ? plot.Height / 2 / most : 0;
        double X(double x) => plot.Left + (plot.Width * (x - from) / (to - from));
        double zero = plot.Middle.Y;
        pad.Line(plot.Left, zero, plot.Right, zero, Pens.Rule);
        Radii(pad, plot, d, most, job.Units);
        var chain = new List<Vec2>();
        double lastName = double.NegativeInfinity;
        for (int i = 0; i < row.XMm.Length; i++)
        {
            double x = X(row.XMm[i]);
            string name = job.Offsets.Stations[row.Stations[i]].Name;
            pad.SpeakOf(PlaceAlong.Of(row.XMm[i], $"station {name}"));
            if (x - lastName > Letters.Width(name, Letters.Small) + 1)
            {
                pad.Text(x, plot.Bottom - 5, name, Letters.Small, Anchor.BaselineCentre);
                lastName = x;
            }

            bool end = i == 0 || i == row.XMm.Length - 1;
            if (end)
            {
                pad.Text(
                    x,
                    zero + 1.5,
                    "tape",
                    Letters.Small,
                    i == 0 ? Anchor.BaselineLeft : Anchor.BaselineRight
                );
            }

            if (!end)
            {
                var p = new Vec2(x, zero + (scale * d[i - 1]));
                pad.Line(new Vec2(x, zero), p, Pens.Measure);
                pad.Dot(p, 0.8);
                chain.Add(p);
            }
        }

        pad.SpeakOf("");
        pad.Open(chain, Pens.Seam);
        Suspicion? worst = judged.Suspicions.FirstOrDefault();
        foreach (Suspicion s in judged.Suspicions)
        {
            int at = row.Stations.IndexOf(s.StationIndex);
            if (at > 0 && at < row.XMm.Length - 1)
            {
                pad.Add([
                    new CircleShape(
                        Layers.Marks,
                        Pens.Cut,
                        new Vec2(X(row.XMm[at]), zero + (scale * d[at - 1])),
                        2.5
                    ),
                ]);
            }
        }

        if (worst is not null)
        {
            pad.SpeakOf(PlaceAlong.Station(job, worst.Station));
            pad.Paragraph(
                box.Left,
                box.Top - Letters.Bench - 2.5,
                box.Width,
                $"station {worst.Station}: {worst.Message(job.WrittenIn, job.Units)}",
                Letters.Bench
            );
            pad.SpeakOf("");
        }
    }

    /// <summary>Grey lines at the sharpest bend and at half of it, on the sides that the row bends to, with their radii.</summary>
    private static void Radii(
        SheetCanvas pad,
        Box plot,
        ImmutableArray<double> bends,
        double most,
        LengthUnit unit
    )
    {
        if (!(most > 1e-9))
        {
            return;
        }

        foreach (double part in new[] { 1, 0.5, -0.5, -1 })
        {
            if (!bends.Any(b => b / most / part >= 0.5))
            {
                continue;
            }

            double y = plot.Middle.Y + (part * plot.Height / 2);
            pad.Line(new(plot.Left, y), new(plot.Right, y), Mark, Layers.Hull);
            pad.Text(
                new(plot.Right, y + 0.8),
                PlankWords.Radius(1 / (most * Math.Abs(part)), unit),
                Letters.Small,
                Anchor.BaselineRight
            );
        }
    }
}
