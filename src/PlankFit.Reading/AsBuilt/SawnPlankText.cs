using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;

namespace PlankFit.Reading.AsBuilt;

/// <summary>One sawn plank as its record holds it; names and order of the members are the record's.</summary>
internal sealed record SawnPlankText
{
    public required string Id { get; init; }
    public required string Revision { get; init; }
    public required double[][] Outline { get; init; }
    public required double[][] Net { get; init; }
    public required double[][] Cut { get; init; }
    public required double[][] ForwardSeam { get; init; }
    public required double[][] ForwardFlat { get; init; }
    public required double[][] AfterSeam { get; init; }
    public required double[][] AfterFlat { get; init; }
    public required SawnEndText[] Ends { get; init; }
    public required SawnSizesText Sizes { get; init; }
    public SawnForText? SawnFor { get; init; }

    public static SawnPlankText Of(SawnPlank p)
    {
        PlankShape shape = p.Shape;
        return new()
        {
            Id = p.Id.ToString(),
            Revision = p.Revision,
            Outline = PointText.Of(shape.Outline),
            Net = PointText.Of(shape.FlatNet),
            Cut = PointText.Of(shape.FlatCut),
            ForwardSeam = PointText.Of(shape.Forward.Seam),
            ForwardFlat = PointText.Of(shape.Forward.Flat),
            AfterSeam = PointText.Of(shape.After.Seam),
            AfterFlat = PointText.Of(shape.After.Flat),
            Ends = [.. p.Form.Ends.Select(e => SawnEndText.Of(p.Id, e))],
            Sizes = SawnSizesText.Of(p.Form),
            SawnFor = p.SawnFor is { } layer ? SawnForText.Of(layer) : null,
        };
    }

    /// <exception cref="FormatException">A member is none of what it may be.</exception>
    public SawnPlank ToPlank() =>
        new(
            PlankId.Parse(Id) ?? throw new FormatException(),
            Revision,
            Sizes.ToForm(
                new(
                    PointText.Space(Outline),
                    PointText.Flat(Net),
                    PointText.Flat(Cut),
                    SawnEdgeText.ToEdge(Sizes.Forward, ForwardSeam, ForwardFlat),
                    SawnEdgeText.ToEdge(Sizes.After, AfterSeam, AfterFlat)
                ),
                [.. Ends.Select(e => e.ToEnd())]
            )
        )
        {
            SawnFor = SawnFor?.ToLayer(),
        };
}

/// <summary>What is said of a sawn plank beside its shapes.</summary>
internal sealed record SawnSizesText
{
    public required string Kind { get; init; }
    public required double NetLengthMm { get; init; }
    public required double CutLengthMm { get; init; }
    public required double WidestMm { get; init; }
    public required double NarrowestMm { get; init; }
    public required double WidestGapMm { get; init; }
    public required double WidestOverlapMm { get; init; }
    public required bool StraightEdges { get; init; }
    public required double? KeelAngleDegrees { get; init; }
    public required double AreaMm2 { get; init; }
    public required double StrainMm { get; init; }
    public required SawnBendText Bend { get; init; }
    public required bool FitBothEnds { get; init; }
    public required bool? DropsIn { get; init; }
    public required SawnMarkText[] Marks { get; init; }
    public required SawnEdgeText? Forward { get; init; }
    public required SawnEdgeText? After { get; init; }

    public static SawnSizesText Of(PlankForm form)
    {
        PlankSizes s = form.Sizes;
        return new()
        {
            Kind = form.Kind.ToString().ToLowerInvariant(),
            NetLengthMm = s.NetLengthMm,
            CutLengthMm = s.CutLengthMm,
            WidestMm = s.WidestMm,
            NarrowestMm = s.NarrowestMm,
            WidestGapMm = s.Straight.WidestGapMm,
            WidestOverlapMm = s.Straight.WidestOverlapMm,
            StraightEdges = s.Straight.Serve,
            KeelAngleDegrees = s.KeelAngleDegrees,
            AreaMm2 = s.AreaMm2,
            StrainMm = s.StrainMm,
            Bend = SawnBendText.Of(form.Bend),
            FitBothEnds = form.Fit.BothEnds,
            DropsIn = form.Fit.DropsIn,
            Marks = [.. form.Marks.Select(SawnMarkText.Of)],
            Forward = SawnEdgeText.Of(form.Shape.Forward),
            After = SawnEdgeText.Of(form.Shape.After),
        };
    }

    public PlankForm ToForm(PlankShape shape, ImmutableArray<PlankEnd> ends) =>
        new(
            Enum.GetValues<PlankKind>()
                .Cast<PlankKind?>()
                .FirstOrDefault(k => k.ToString()!.ToLowerInvariant() == Kind)
                ?? throw new FormatException(),
            shape,
            new(
                NetLengthMm,
                CutLengthMm,
                WidestMm,
                NarrowestMm,
                AreaMm2,
                StrainMm,
                KeelAngleDegrees,
                new(WidestGapMm, WidestOverlapMm, StraightEdges)
            ),
            ends,
            new(FitBothEnds, DropsIn),
            (Bend ?? throw new FormatException()).ToBend(),
            [.. Marks.Select(m => m.ToMark())]
        );
}

/// <summary>The bend of a sawn plank: what is to be done about it was done.</summary>
internal sealed record SawnBendText(
    double? LeastRadiusMm,
    double StrainPercent,
    double TwistDegreesPerMetre,
    double EdgeStrainPercent,
    double WorstAtMm,
    string Verdict
)
{
    public double GrainStrainPercent { get; init; }

    public double MostGaussPerMm2 { get; init; }

    public static SawnBendText Of(Bend bend) =>
        new(
            bend.LeastRadiusMm,
            bend.StrainPercent,
            bend.TwistDegreesPerMetre,
            bend.EdgeStrainPercent,
            bend.WorstAtMm,
            bend.Verdict
        )
        {
            GrainStrainPercent = bend.GrainStrainPercent,
            MostGaussPerMm2 = bend.MostGaussPerMm2,
        };

    public Bend ToBend() =>
        new(
            LeastRadiusMm,
            StrainPercent,
            TwistDegreesPerMetre,
            EdgeStrainPercent,
            WorstAtMm,
            Verdict
        )
        {
            GrainStrainPercent = GrainStrainPercent,
            MostGaussPerMm2 = MostGaussPerMm2,
        };
}

/// <summary>One long edge beside its points; null in the record where the plank has none.</summary>
internal sealed record SawnEdgeText(
    double SeamLengthMm,
    double RoundMm,
    double HollowMm,
    string ShapeWord,
    string? Neighbour
)
{
    public static SawnEdgeText? Of(PlankEdge edge) =>
        edge.Exists
            ? new(
                edge.SeamLengthMm,
                edge.RoundMm,
                edge.HollowMm,
                edge.ShapeWord,
                edge.Neighbour?.ToString()
            )
            : null;

    /// <summary>What does not go together is left for <see cref="SawnPlankFaults"/> to tell.</summary>
    public static PlankEdge ToEdge(SawnEdgeText? told, double[][] seam, double[][] flat) =>
        told is null
            ? PlankEdge.None with
            {
                Seam = PointText.Space(seam),
                Flat = PointText.Flat(flat),
            }
            : new(
                PointText.Space(seam),
                PointText.Flat(flat),
                told.SeamLengthMm,
                told.RoundMm,
                told.HollowMm,
                told.ShapeWord,
                told.Neighbour is { } name
                    ? PlankId.Parse(name) ?? throw new FormatException()
                    : null
            );
}

internal sealed record SawnMarkText(string Kind, string Label, double[] At, double[] Inward)
{
    public static SawnMarkText Of(PlankMark m) =>
        new(
            m.Kind,
            m.Label,
            [PointText.Whole(m.At.X), PointText.Whole(m.At.Y)],
            [PointText.Whole(m.Inward.X), PointText.Whole(m.Inward.Y)]
        );

    public PlankMark ToMark() =>
        At.Length == 2 && Inward.Length == 2
            ? new(Kind, Label, new(At[0], At[1]), new(Inward[0], Inward[1]))
            : throw new FormatException();
}

internal sealed record SawnForText(string Name, double ThicknessMm, string Heads)
{
    public static SawnForText Of(SawnLayer l) =>
        new(l.Name, l.ThicknessMm, l.Heads == Planking.Layers.Heads.Aft ? "aft" : "forward");

    public SawnLayer ToLayer() =>
        new(
            Name,
            ThicknessMm,
            Heads switch
            {
                "aft" => Planking.Layers.Heads.Aft,
                "forward" => Planking.Layers.Heads.Forward,
                _ => throw new FormatException(),
            }
        );
}
