using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>What is said of a sawn plank beside its shapes, as its record holds it.</summary>
internal sealed record CutSizesText(
    string Kind,
    double NetLengthMm,
    double CutLengthMm,
    double WidestMm,
    double NarrowestMm,
    double WidestGapMm,
    double WidestOverlapMm,
    bool StraightEdges,
    double? KeelAngleDegrees,
    double AreaMm2,
    double StrainMm,
    Bend Bend,
    bool FitBothEnds,
    bool? DropsIn,
    CutSizesText.MarkText[] Marks,
    CutEdge? Forward,
    CutEdge? After
)
{
    public static CutSizesText Of(CutSizes s) =>
        new(
            s.Kind.ToString().ToLowerInvariant(),
            s.NetLengthMm,
            s.CutLengthMm,
            s.WidestMm,
            s.NarrowestMm,
            s.WidestGapMm,
            s.WidestOverlapMm,
            s.StraightEdges,
            s.KeelAngleDegrees,
            s.AreaMm2,
            s.StrainMm,
            s.Bend,
            s.FitBothEnds,
            s.DropsIn,
            [.. s.Marks.Select(MarkText.Of)],
            s.Forward,
            s.After
        );

    public CutSizes ToSizes() =>
        new(
            Enum.GetValues<PlankKind>()
                .Cast<PlankKind?>()
                .FirstOrDefault(k => k.ToString()!.ToLowerInvariant() == Kind)
                ?? throw new FormatException(),
            NetLengthMm,
            CutLengthMm,
            WidestMm,
            NarrowestMm,
            WidestGapMm,
            WidestOverlapMm,
            StraightEdges,
            KeelAngleDegrees,
            AreaMm2,
            StrainMm,
            Bend ?? throw new FormatException(),
            FitBothEnds,
            DropsIn,
            [.. Marks.Select(m => m.ToMark())],
            Forward,
            After
        );

    internal sealed record MarkText(string Kind, string Label, double[] At, double[] Inward)
    {
        public static MarkText Of(PlankMark m) =>
            new(
                m.Kind,
                m.Label,
                [CutPlanksFile.Whole(m.At.X), CutPlanksFile.Whole(m.At.Y)],
                [CutPlanksFile.Whole(m.Inward.X), CutPlanksFile.Whole(m.Inward.Y)]
            );

        public PlankMark ToMark() =>
            At.Length == 2 && Inward.Length == 2
                ? new(Kind, Label, new(At[0], At[1]), new(Inward[0], Inward[1]))
                : throw new FormatException();
    }
}
