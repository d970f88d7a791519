using PlankFit.Export.Words;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>An end as the saw wants it, in a column: figures large, their meaning under them, the sketches beside.</summary>
internal static class EndFigures
{
    private const double SketchMm = 16;
    private const double BevelSketchMm = 7.6;

    /// <returns>The foot of the column.</returns>
    public static double Draw(
        SheetCanvas pad,
        Box column,
        Plank plank,
        PlankEnd end,
        double thicknessMm,
        LengthUnit unit
    )
    {
        var reading = EndReading.Of(plank, end, thicknessMm);
        double x = column.Left,
            width = column.Width,
            sketchAt = column.Right - (SketchMm / 2);
        double sketchEnd = reading.FacesOutboard ? sketchAt + 3 : sketchAt - 3;
        double y = pad.Paragraph(
            x,
            column.Top,
            width,
            $"{end.Word}: {EndWords.Cut(end, unit)}",
            Letters.Small,
            true
        );
        y -= 0.8;
        if (reading.Leans == Toward.Neither)
        {
            y = Pair(pad, x, y, width - SketchMm, "square", "no fall");
            EndSketches.Lean(pad, new(sketchEnd, y + 4.4), end, reading.FacesOutboard);
        }
        else
        {
            double top = y;
            string toward = reading.Leans == Toward.Forward ? "forward" : "aft";
            y = Pair(
                pad,
                x,
                y,
                width - SketchMm,
                AngleText.ForPaper(reading.DegreesFromSquare) + " off square",
                $"leans {toward} going {Panel.OutwardWordOf(plank.Id)}"
            );
            EndSketches.Lean(pad, new(sketchEnd, top - 3.2), end, reading.FacesOutboard);
            string sliver = EndWords.Sliver(unit);
            int colon = sliver.IndexOf(':', StringComparison.Ordinal);
            y = EndWords.IsSliver(reading, unit)
                ? Pair(pad, x, y, width, sliver[..colon], sliver[(colon + 2)..])
                : Pair(
                    pad,
                    x,
                    y,
                    width,
                    $"fall {LengthText.PaperNumber(reading.FallMm, unit)} across {LengthText.PaperNumber(reading.AcrossMm, unit)}",
                    EndWords.Edge(reading.LongCorner) + " corner the longer"
                );
        }

        string bevel = EndWords.Bevel(plank, end, thicknessMm, unit);
        if (Tapered(end, reading.FacesOutboard) is { } taper)
        {
            return Pair(
                pad,
                x,
                y,
                width,
                $"taper {LengthText.PaperNumber(taper.LongMm, unit)} long",
                $"on its {taper.Face} face, to nothing at its end"
            );
        }

        if (bevel == "no bevel")
        {
            return Pair(pad, x, y, width, "no bevel", "faces alike");
        }

        double bevelTop = y;
        int comma = bevel.IndexOf(',', StringComparison.Ordinal);
        y = pad.Paragraph(
            x,
            y,
            width - SketchMm,
            comma < 0 ? bevel : bevel[..comma],
            Letters.Bench,
            true
        );
        if (comma >= 0)
        {
            y = Beside(pad, x, y + 0.5, width, bevelTop - BevelSketchMm, bevel[(comma + 2)..]);
        }

        EndSketches.Bevel(pad, new(sketchEnd, bevelTop - 4.2), end, reading.FacesOutboard);
        return Math.Min(y, bevelTop - BevelSketchMm);
    }

    /// <summary>The face that a scarf's taper takes wood off, and how long the taper is along the plank, mm; null where both faces end together or the saw is tilted.</summary>
    private static (string Face, double LongMm)? Tapered(PlankEnd end, bool facesOutboard)
    {
        const double TogetherMm = 0.5;
        if (
            end.OuterLine.IsDefaultOrEmpty
            || end.InnerLine.IsDefaultOrEmpty
            || Math.Abs(end.BevelDegrees) >= EndReading.SquareWithinDegrees
        )
        {
            return null;
        }

        double outerBeyond =
            (end.OuterLine.Average(p => p.X) - end.InnerLine.Average(p => p.X))
            * (facesOutboard ? 1 : -1);
        return Math.Abs(outerBeyond) < TogetherMm
            ? null
            : (outerBeyond > 0 ? "inner" : "outer", Math.Abs(outerBeyond));
    }

    /// <summary>Words beside a sketch as far down as it goes, below it across the whole column.</summary>
    private static double Beside(
        SheetCanvas pad,
        double x,
        double top,
        double width,
        double sketchFoot,
        string text
    )
    {
        IReadOnlyList<string> narrow = Letters.Wrap(text, Letters.Small, width - SketchMm);
        int beside = 0;
        while (beside < narrow.Count && top > sketchFoot)
        {
            top = pad.Paragraph(x, top, width - SketchMm, narrow[beside], Letters.Small);
            beside++;
        }

        return pad.Paragraph(x, top, width, string.Join(" ", narrow.Skip(beside)), Letters.Small);
    }

    /// <summary>The same in one line for a list whose head names the unit.</summary>
    public static string Line(Plank plank, PlankEnd end, double thicknessMm, LengthUnit unit)
    {
        var reading = EndReading.Of(plank, end, thicknessMm);
        string lean =
            reading.Leans == Toward.Neither
                ? "square"
                : $"{AngleText.ForPaper(reading.DegreesFromSquare)} off square, leans {(reading.Leans == Toward.Forward ? "forward" : "aft")}, "
                    + (
                        EndWords.IsSliver(reading, unit)
                            ? EndWords.Sliver(unit)
                            : $"fall {LengthText.PaperNumber(reading.FallMm, unit)} across {LengthText.PaperNumber(reading.AcrossMm, unit)}, "
                                + $"{EndWords.Edge(reading.LongCorner)} corner longer"
                    );
        return $"{end.Word}, {EndWords.Cut(end, unit)}: {lean}; {EndWords.Bevel(plank, end, thicknessMm, unit)}";
    }

    private static double Pair(
        SheetCanvas pad,
        double x,
        double top,
        double width,
        string figure,
        string meaning
    )
    {
        double y = pad.Paragraph(x, top, width, figure, Letters.Bench, true);
        return pad.Paragraph(x, y + 0.5, width, meaning, Letters.Small) - 0.5;
    }
}
