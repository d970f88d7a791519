using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.SettingUp;

/// <summary>The corner at the chine on paper, section by section; all of it in the plane square to the chine.</summary>
internal static class ChineLists
{
    public static ListSheet Trims(Job job, SettingUpPlan plan)
    {
        string Signed(double mm) => SettingUpWords.Signed(mm, job.Units);
        string how = plan.Spec.ChinePiece is { } piece
            ? $"Bottom and topside end against a hard chine piece, square to themselves: {LengthText.ForPaper(piece.WidthMm, job.Units)} in from the edge on the bottom's outer face, {LengthText.ForPaper(piece.UpMm, job.Units)} up from it on the topside's."
            : $"The topside is {LengthText.ForPaper(plan.Spec.Topside!.ThicknessMm, job.Units)} thick; how the skins meet is said for each section.";
        return new(
            SettingUpPages.Block("the chine: where the bottom's planks are trimmed"),
            [
                how
                    + " Trim: how far the bottom's planks end past (+) or short of (-) the table's chine, carried square to the surface, on each face of the whole stack, measured square to the chine. Layers between lie on the straight line from the one to the other.",
                "End bevel: off square to the planks' face, for saw or plane. Corner: between the outer faces, in the wood, square to the chine.",
            ],
            [
                new("section", 12, false),
                new("deadrise at chine", 11),
                new("topside off plumb", 11),
                new("corner", 9),
                new("the skins", 20, false),
                new($"trim, outer face, {SheetWords.Unit(job.Units)}", 14),
                new("trim, inner face", 13),
                new("end bevel", 26, false),
            ],
            [
                .. plan.Chine.Select(c =>
                    ImmutableArray.Create(
                        c.Section,
                        AngleText.ForPaper(c.DeadriseDegrees),
                        AngleText.ForPaper(c.FlareDegrees),
                        AngleText.ForPaper(c.Corner.CornerDegrees),
                        SettingUpWords.Meeting(plan.Spec, c),
                        Signed(c.Corner.Trim.OuterMm),
                        Signed(c.Corner.Trim.InnerMm),
                        SettingUpWords.PlankEnd(c.Corner.TrimBevelDegrees)
                    )
                ),
            ]
        );
    }

    public static ListSheet Edge(Job job, SettingUpPlan plan)
    {
        LengthUnit unit = job.Units;
        string Mm(double mm) => LengthText.PaperNumber(mm, unit);
        double? log = plan.Spec.ChineLogMm;
        bool piece = plan.Spec.ChinePiece is not null;
        ImmutableArray<string> Row(ChinePlace c)
        {
            ImmutableArray<string>.Builder row = ImmutableArray.CreateBuilder<string>();
            row.Add(c.Section);
            row.Add(Mm(c.Corner.Rounded.TangentMm));
            row.Add(Mm(c.Corner.Rounded.OffMm));
            if (log is { } width)
            {
                row.Add(SettingUpWords.Bevel(-c.Corner.LogBevelDegrees));
                row.Add(
                    Math.Abs(c.Corner.LogBevelDegrees) > 45
                        ? "more than its width"
                        : Mm(width * Math.Tan(Math.Abs(c.Corner.LogBevelDegrees) * Math.PI / 180))
                );
            }

            if (piece)
            {
                (double bottom, double up) = c.Corner.PieceInner!.Value;
                row.Add(c.Corner.PieceHolds ? Mm(bottom) : "too small");
                row.Add(c.Corner.PieceHolds ? Mm(up) : "too small");
            }

            return row.ToImmutable();
        }

        return new(
            SettingUpPages.Block("the chine: rounding for cloth, log and piece"),
            [
                $"Cloth is laid over a radius of {LengthText.ForPaper(plan.Spec.ClothRadiusMm, unit)} at the least (common practice, no source: try yours on scrap). Gauge the round from the edge on both faces; \"off the edge\" is what it takes along the corner's middle line.",
                .. log is { } w
                    ? ImmutableArray.Create(
                        $"Chine log: bevel of its bottom face off square to its side against the topside, and the fall over its width of {LengthText.ForPaper(w, unit)}. Standing (open): its corner is more than square; under (shut): less."
                    )
                    : [],
                .. piece
                    ? ImmutableArray.Create(
                        "Chine piece: its two outer faces are as wide as the job says and lie in the outer faces of the skins; given are its two inner faces, in line with the skins' inner faces, from the corner's inner edge. Its faces against the planks are square to the outer ones."
                    )
                    : [],
            ],
            [
                new("section", 12, false),
                new($"round begins, from the edge, {SheetWords.Unit(unit)}", 18),
                new("off the edge", 12),
                .. log is null
                    ? []
                    : new ListColumn[] { new("chine log bevel", 16), new("fall", 20) },
                .. piece
                    ? new ListColumn[]
                    {
                        new("piece, inner face along the bottom", 16),
                        new("piece, inner face up the topside", 16),
                    }
                    : [],
            ],
            [.. plan.Chine.Select(Row)]
        );
    }
}
