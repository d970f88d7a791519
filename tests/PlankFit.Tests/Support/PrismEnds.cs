using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Support;

/// <summary>The ends of one plank of a prism. Only the plumb keel side is not square to the plank: it stands at the deadrise.</summary>
internal sealed class PrismEnds(
    Prism prism,
    PlankLayerSpec spec,
    LabelledPolygon net,
    LabelledPolygon outer,
    LabelledPolygon inner,
    Func<Vec2, Vec3> space
)
{
    private static bool IsSeam(Stretch on) => on is Stretch.ForwardSeam or Stretch.AfterSeam;

    public ImmutableArray<PlankEnd> All()
    {
        ImmutableArray<PlankEnd> ends =
        [
            .. net
                .Edges.Where(e => !IsSeam(e.On))
                .OrderBy(e => e.From.X + e.To.X)
                .Select(e => One(e.On)),
        ];
        bool fitBoth = ends.Length > 1 && ends[0].Cut == EndCut.Fit && ends[^1].Cut == EndCut.Fit;
        // Where both ends fit and the job names no allowance, the outboard one gets 15 mm to scribe away.
        return fitBoth && ends.All(e => e.AllowanceMm == 0)
            ? ends.SetItem(ends.Length - 1, ends[^1] with { AllowanceMm = 15 })
            : ends;
    }

    /// <summary>The shape to saw: stock edges, and each end's chord moved out by what is left long, or by the longer face and the allowance.</summary>
    public LabelledPolygon Cut(ImmutableArray<PlankEnd> ends, double halfWidth)
    {
        const double Far = 1e5;
        LabelledPolygon cut = new([
            (new(-Far, -halfWidth), Stretch.ForwardSeam),
            (new(Far, -halfWidth), Stretch.ForwardSeam),
            (new(Far, halfWidth), Stretch.AfterSeam),
            (new(-Far, halfWidth), Stretch.AfterSeam),
        ]);
        foreach (PlankEnd end in ends)
        {
            (Vec2 from, Vec2 to) = net.Edge(On(end.At))!.Value;
            Vec2 outward = -1 * (to - from).Unit().Left();
            double longer = spec.ThicknessMm / 2 * Math.Tan(end.BevelDegrees * Math.PI / 180),
                past = end.Cut == EndCut.LeftLong
                    ? end.OverhangMm!.Value
                    : longer + end.AllowanceMm;
            cut = cut.Clip(outward, outward.Dot(from) + past, On(end.At));
        }

        return cut;
    }

    private PlankEnd One(Stretch on)
    {
        ImmutableArray<Vec2> line = Line(net, on, prism.MaxChordMm);
        Vec2 chord = line[^1] - line[0];
        PanelEdge at = At(on);
        EndRule rule = (prism.Ends ?? EndRules.Default).For(
            at,
            (space(line[0]).X + space(line[^1]).X) / 2
        );
        double bevel = at == PanelEdge.Lower ? prism.DeadriseDegrees : 0;
        return new(
            at,
            rule.Cut,
            new(Math.Atan2(chord.Y, chord.X) * 180 / Math.PI, bevel, bevel, bevel),
            rule.Cut == EndCut.LeftLong ? rule.ByMm : null,
            rule.Cut == EndCut.Fit ? rule.AllowanceMm ?? 0 : 0,
            new(line, [.. line.Select(space)], Line(outer, on, null), Line(inner, on, null))
        );
    }

    /// <summary>Lesser n first; empty where a face does not reach that edge at all.</summary>
    private static ImmutableArray<Vec2> Line(LabelledPolygon face, Stretch on, double? maxChordMm)
    {
        if (face.Edge(on) is not { } edge)
        {
            return [];
        }

        (Vec2 a, Vec2 b) = edge.From.Y < edge.To.Y ? edge : (edge.To, edge.From);
        int parts = maxChordMm is { } most ? (int)Math.Ceiling(a.ChordTo(b) / most) : 1;
        return [.. Enumerable.Range(0, parts + 1).Select(k => a + ((double)k / parts * (b - a)))];
    }

    private static PanelEdge At(Stretch on) =>
        on switch
        {
            Stretch.Keel => PanelEdge.Lower,
            Stretch.Chine => PanelEdge.Upper,
            Stretch.Transom => PanelEdge.Transom,
            _ => PanelEdge.Stem,
        };

    private static Stretch On(PanelEdge at) =>
        at switch
        {
            PanelEdge.Lower => Stretch.Keel,
            PanelEdge.Upper => Stretch.Chine,
            PanelEdge.Transom => Stretch.Transom,
            _ => Stretch.Stem,
        };
}
