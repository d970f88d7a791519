using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Building;

/// <summary>A plank with what its neighbours need to know of it.</summary>
internal sealed record BuiltPlank(
    Plank Plank,
    PlankSide? Forward,
    PlankSide? After,
    Geodesic OwnLine
);

/// <summary>From two seams to a starboard plank: net shape, flat shape, ends, shape to saw, bend.</summary>
internal sealed class PlankBuilder(
    LayerFaces faces,
    PlankLayerSpec spec,
    int layer,
    EndRules rules,
    BendJudge judge,
    KeelSideFace keelSide,
    Tracing tracing,
    LostPlace lost
)
{
    /// <summary>
    /// Every chord of an outline lies within 0.002 mm of its curve. They are sampled more finely than that: where the bend changes between two looks, a chord may be
    /// out by a sixth more than was seen.
    /// </summary>
    private const double ChordMm = 0.0016;

    /// <summary>The normal past an edge may turn by no more than this from what it is at the edge, degrees: our own, no source.</summary>
    private const double MostTurnDegrees = 15;

    /// <summary>By which angles may be out in the flat before a piece's own line is moved, radians: 0.05°, half of what a check is to see. Our own, no source.</summary>
    private const double MostAngle = 0.05 * Math.PI / 180;

    /// <summary>A piece that is as wide as this part of its stock has its own line near its middle already: our own, no source.</summary>
    private const double NearWhole = 0.9;

    private LayerRegion Region => faces.Middle;

    public BuiltPlank Build(SeamRow row, int index)
    {
        int number = index + row.FirstNumber;
        PlankId id = IdOf(number);
        try
        {
            return Work(row, index, id);
        }
        catch (GeodesicException e)
        {
            throw new JobFaultException(
                id,
                $"the plank cannot be worked out: {lost.Told(e)}; {lost.Remedy(e)}"
            );
        }
    }

    private PlankId IdOf(int number) => new(Side.Starboard, Region.Panel.Letter, layer, number);

    private BuiltPlank Work(SeamRow row, int index, PlankId id)
    {
        Seam? forward = row.Forward(index),
            after = row.After(index);
        return Work(
            row,
            index,
            id,
            SeamFamily.OwnLine(Region, spec, forward, after, tracing),
            spec.WidthMm,
            mayMove: forward is null || after is null
        );
    }

    /// <param name="own">The plank's own line.</param>
    /// <param name="widthMm">Over which its length is meant.</param>
    /// <param name="mayMove">A line nearer the plank's middle may be taken in its place.</param>
    private BuiltPlank Work(
        SeamRow row,
        int index,
        PlankId id,
        Geodesic own,
        double widthMm,
        bool mayMove
    )
    {
        Seam? forward = row.Forward(index),
            after = row.After(index);
        Seam? net = Crossings.Find(Region, own);
        double zero = net?.In.S ?? (forward ?? after)!.In.S;
        var map = StripMap.About(Region, own, Math.Clamp(zero, own.From, own.To), widthMm, tracing);
        PlankSide? ahead = forward is null ? null : PlankSide.Along(Region, map, forward, ChordMm);
        PlankSide? behind = after is null ? null : PlankSide.Along(Region, map, after, ChordMm);
        var ends = new EndPieces(faces, map, rules, keelSide, ChordMm);
        List<EndPiece> outer = [],
            inner = [];
        if (forward is not null && after is not null)
        {
            outer = Pieces(ends, BoundaryWalk.Outer(Region, forward, after), forward, after);
            inner = Pieces(ends, BoundaryWalk.Inner(Region, forward, after), after, forward);
        }
        else if (after is not null)
        {
            outer = Pieces(ends, BoundaryWalk.Ahead(Region, after), after, after);
        }
        else
        {
            outer = Pieces(ends, BoundaryWalk.Behind(Region, forward!), forward, forward);
        }

        (outer, inner) = LeftLongWhereItRunsOut(outer, inner);
        var shape = new BuiltShape(ahead, behind, outer, inner);
        if (mayMove && NearItsMiddle((forward ?? after)!, shape.Net) is { } wide)
        {
            Geodesic nearer = SeamFamily.OwnLine(Region, spec, forward, after, tracing, wide / 2);
            return Work(row, index, id, nearer, wide, mayMove: false);
        }

        CheckReach(id, own, net, map, outer, inner);
        Dictionary<EndPiece, double> allowances = Allowances(shape, own, out bool fitBoth);
        List<Vec2> cut = SawnOutline.Build(
            ahead?.Flat,
            behind?.Flat,
            shape.Ends.Select(e => (e, allowances.GetValueOrDefault(e))),
            spec.WidthMm / 2,
            shape.Net.Min(p => p.Y),
            shape.Net.Max(p => p.Y)
        );
        if (cut.Count == 0)
        {
            throw new JobFaultException(
                id,
                "nothing of the plank is left to saw: its layer lies so far off the table's surface that the bottom folds there; give thinner layers, or look at the table where this plank lies"
            );
        }

        (double widest, double narrowest, Func<double, double> width) = PlankFigures.Widths(
            shape,
            ahead,
            behind,
            own
        );
        var lines = new List<(Geodesic, double, double)>();
        if (net is not null)
        {
            lines.Add((own, net.In.S, net.Out.S));
        }

        lines.AddRange(
            new[] { forward, after }.OfType<Seam>().Select(s => (s.Line, s.In.S, s.Out.S))
        );
        Bend bend = BendCheck.Of(Region, spec, judge, lines, width, widest, zero);
        double length = net?.LengthMm ?? shape.Net.Max(p => p.X) - shape.Net.Min(p => p.X);
        var plankEnds = shape
            .Ends.Select(e => PlankFigures.End(e, allowances.GetValueOrDefault(e), Region.Panel))
            .OrderBy(e => PlankFigures.Middle(e.NetLine).X)
            .ToImmutableArray();
        var made = new PlankShape(
            shape.Space,
            shape.Net,
            [.. cut],
            PlankFigures.Edge(ahead, -1, index > 0 ? IdOf(id.Number - 1) : null),
            PlankFigures.Edge(behind, 1, index < row.Planks - 1 ? IdOf(id.Number + 1) : null)
        );
        var sizes = new PlankSizes(
            length,
            cut.Max(p => p.X) - cut.Min(p => p.X),
            widest,
            narrowest,
            FlatPolygon.Area(shape.Net),
            bend.EdgeStrainPercent / 100 * length,
            net is { In.Edge: PanelEdge.Lower }
                ? KeelAngle.Of(Region, own.At(net.In.S), spec.Heads)
                : null,
            StraightEdges.NotJudged
        );
        bool? dropsIn = fitBoth
            ? plankEnds.All(e => Math.Min(e.BevelAtLeastN, e.BevelAtGreatestN) >= -1e-9)
            : null;
        ImmutableArray<PlankMark> marks =
        [
            .. ahead is null ? [] : WitnessTicks.Along(ahead, id.Number - 1, 1),
            .. behind is null ? [] : WitnessTicks.Along(behind, id.Number, -1),
        ];
        var plank = new Plank(
            id,
            new(Kind(row, index), made, sizes, plankEnds, new(fitBoth, dropsIn), bend, marks)
        )
        {
            Map = new(map, Region.Surface),
            IsFitted = row.Fitted.Contains(index),
        };
        return new(plank, ahead, behind, own);
    }

    /// <summary>
    /// A piece with one seam, narrower than its stock, lies to one side of a line half a stock width from that seam. Where the surface is so curved that angles there
    /// come out by more than is trusted, its own line is to run through its middle: how wide it is, mm; null where half the stock will do.
    /// </summary>
    private double? NearItsMiddle(Seam seam, IReadOnlyList<Vec2> net)
    {
        const int Looks = 8;
        double low = net.Min(p => p.Y),
            high = net.Max(p => p.Y),
            gauss = Enumerable
                .Range(0, Looks + 1)
                .Max(i =>
                {
                    Uv uv = seam.Line.UvAt(seam.In.S + ((seam.Out.S - seam.In.S) * i / Looks));
                    return Math.Abs(Region.Surface.At(uv.U, uv.V).GaussCurvature);
                });
        // At a distance n of a geodesic lengths along it are out by K n²/2, and angles by no more than that.
        double most = Math.Max(Math.Abs(low), Math.Abs(high));
        return gauss * most * most / 2 > MostAngle && high - low < NearWhole * spec.WidthMm
            ? high - low
            : null;
    }

    /// <summary>Where the keel has faded under a plank's inner end the pair of ends changes: left long at the keel, fit at the chine.</summary>
    private (List<EndPiece> Outer, List<EndPiece> Inner) LeftLongWhereItRunsOut(
        List<EndPiece> outer,
        List<EndPiece> inner
    )
    {
        if (rules.RunOut is not { } runOut)
        {
            return (outer, inner);
        }

        bool Over(EndPiece e) => e.Piece.Edge == PanelEdge.Lower && MiddleX(e) < runOut.XMm;
        if (!outer.Concat(inner).Any(Over))
        {
            return (outer, inner);
        }

        EndPiece Changed(EndPiece e) =>
            rules.Zoned(e.Piece.Edge, MiddleX(e)) ? e
            : Over(e) ? e with { Rule = EndRule.LeftLong(runOut.ByMm) }
            : e.Piece.Edge == PanelEdge.Upper ? e with { Rule = EndRule.Fit }
            : e;
        return ([.. outer.Select(Changed)], [.. inner.Select(Changed)]);
    }

    private double MiddleX(EndPiece e) =>
        Region.PointAt(Region.OnLap(e.Piece.Middle, e.Piece.Edge)).X;

    private static List<EndPiece> Pieces(
        EndPieces ends,
        IReadOnlyList<BoundaryPiece> pieces,
        Seam? start,
        Seam? end
    )
    {
        var worked = new List<EndPiece>();
        for (int i = 0; i < pieces.Count; i++)
        {
            worked.Add(
                ends.Work(pieces[i], i == 0 ? start : null, i == pieces.Count - 1 ? end : null)
            );
        }

        return worked;
    }

    /// <summary>An end that is fit gets what the job names; where both ends fit and none is named, the outboard one gets 15 mm to scribe (a proposal, no source).</summary>
    private static Dictionary<EndPiece, double> Allowances(
        BuiltShape shape,
        Geodesic own,
        out bool fitBoth
    )
    {
        var allowances = new Dictionary<EndPiece, double>(ReferenceEqualityComparer.Instance);
        foreach (EndPiece e in shape.Ends.Where(e => e.Rule.Cut == EndCut.Fit))
        {
            allowances[e] = e.Rule.AllowanceMm ?? 0;
        }

        fitBoth =
            shape.Inner.Count > 0
            && shape.Outer.Count > 0
            && shape.Ends.All(e => e.Rule.Cut == EndCut.Fit);
        if (fitBoth && shape.Ends.All(e => e.Rule.AllowanceMm is null))
        {
            foreach (EndPiece e in shape.Outer)
            {
                allowances[e] = PlankEnd.UsualAllowanceMm;
            }
        }

        return allowances;
    }

    private PlankKind Kind(SeamRow row, int index) =>
        index == 0 || index == row.Planks - 1 ? PlankKind.Corner
        : index == row.Master ? PlankKind.Master
        : row.Tapered.Contains(index) ? PlankKind.Tapered
        : PlankKind.Full;

    /// <summary>The extension past the bottom's edges must still be something like the bottom.</summary>
    private void CheckReach(
        PlankId id,
        Geodesic own,
        Seam? net,
        StripMap map,
        List<EndPiece> outer,
        List<EndPiece> inner
    )
    {
        foreach (EndPiece e in outer.Concat(inner))
        {
            foreach (int k in new[] { 0, e.Net.Length - 1 })
            {
                Fermi foot = map.Find(
                    Region.OnLap(k == 0 ? e.Piece.From : e.Piece.To, e.Piece.Edge),
                    null
                );
                Uv uv = Region.OnLap(k == 0 ? e.Piece.From : e.Piece.To, e.Piece.Edge);
                Vec3 edge = Region.Surface.At(uv.U, uv.V).Normal;
                double turn =
                    Math.Acos(Math.Clamp(edge.Dot(own.Under(foot.S).Normal), -1, 1))
                    * 180
                    / Math.PI;
                Uv under = own.UvAt(foot.S);
                double room = Region.Room(under);
                if (turn > MostTurnDegrees && room < 0)
                {
                    throw new JobFaultException(
                        id,
                        u =>
                            $"past the {Region.Panel.WordOf(e.Piece.Edge)} the {Region.Panel.Name} would have to be carried on {LengthText.ForPaper(-room, u)}, where it turns by {NumberText.Trimmed(turn, 0)} degrees; move `master`, or give narrower stock"
                    );
                }
            }
        }
    }
}
