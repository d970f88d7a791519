using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Sheathing;

/// <summary>Lays every cloth on its face, divides it into courses and finds them their places on the rolls.</summary>
internal static class SheathingPlanner
{
    public static SheathingPlan Of(
        ImmutableArray<ClothSpec> cloths,
        ImmutableArray<SheathingSpec> sheathing,
        Planked planked,
        ImmutableArray<FramingSpec> behind,
        CancellationToken stop
    )
    {
        bool apart = planked.PlankLayers.Any(l => l.PortApart is not null);
        ImmutableArray<Side>[] sides = apart
            ?
            [
                [Side.Starboard],
                [Side.Port],
            ]
            :
            [
                [Side.Starboard, Side.Port],
            ];
        SheathingSpec[] inOrder =
        [
            .. planked.Job.Layers.SelectMany(l => sheathing.Where(s => s.Layer == l.Name)),
        ];
        // How a cloth lies hangs on its face alone.
        Laid[] toLay =
        [
            .. inOrder.SelectMany(spec =>
                sides.Select(on => new Laid(
                    planked,
                    spec,
                    cloths.First(c => c.Name == spec.Cloth),
                    behind,
                    on
                ))
            ),
        ];
        Lying[] lying = SideBySide.All(toLay.Length, i => OfSide(toLay[i]), stop);
        ImmutableArray<SheathedLayer>.Builder layers =
            ImmutableArray.CreateBuilder<SheathedLayer>();
        List<Finding> findings = [];
        SheathedSide? before = null;
        foreach (Lying[] both in lying.Chunk(sides.Length))
        {
            stop.ThrowIfCancellationRequested();
            SheathedSide?[] covered = [.. both.Select(s => Covered(s, before, findings))];
            if (covered.Any(s => s is null))
            {
                continue;
            }

            (SheathingSpec spec, ClothSpec cloth) = (both[0].On.Spec, both[0].On.Cloth);
            StackedLayer stacked = Stack
                .Of(planked.Job)
                .Layers.First(l => l.Spec.Name == spec.Layer);
            var layer = new SheathedLayer(
                layers.Count + 1,
                spec,
                cloth,
                stacked.Spec.ThicknessMm,
                stacked.InnerMm,
                [.. covered.OfType<SheathedSide>()]
            );
            layer = layer with { Pieces = ClothPieces.Of(layer) };
            before = layer.Sides[0];
            layers.Add(layer);
        }

        ClothSpec[] used = [.. cloths.Where(c => layers.Any(l => l.Cloth.Name == c.Name))];
        RollPlan[] rolls = SideBySide.All(
            used.Length,
            i =>
                RollPlanner.Of(
                    used[i],
                    [.. layers.Where(l => l.Cloth.Name == used[i].Name).SelectMany(l => l.Pieces)]
                ),
            stop
        );
        return new(
            layers.ToImmutable(),
            [.. rolls],
            [.. findings, .. SheathingFindings.Of(layers, [.. rolls], planked.Job)]
        )
        {
            Unlaid = [.. inOrder.Select(s => s.Layer).Except(layers.Select(l => l.Name))],
        };
    }

    /// <summary>One layer on its way, on the sides that are alike.</summary>
    private sealed record Laid(
        Planked Planked,
        SheathingSpec Spec,
        ClothSpec Cloth,
        ImmutableArray<FramingSpec> Behind,
        ImmutableArray<Side> Holds
    );

    /// <summary>A layer's cloth as it lies, and the bottom's edges on it; without them where it does not lie, which is then found.</summary>
    private sealed record Lying(Laid On, ClothFace Face, DrapedCloth? Draped, FlatEdges? Edges)
    {
        public Finding? Fault { get; init; }
    }

    private static Lying OfSide(Laid on)
    {
        var face = ClothFace.Of(on.Planked, on.Spec.Layer, on.Holds[0]);
        try
        {
            DrapedCloth draped = ClothDraping.Of(
                face,
                on.Spec,
                on.Cloth,
                d => Reach(face, on.Spec, d)
            );
            return FlatEdges.On(face, draped) is { } edges
                ? new(on, face, draped, edges)
                : new(on, face, null, null)
                {
                    Fault = draped.Net.Stop is { } stop
                        ? SheathingFindings.Stopped(on.Spec, stop, Place(on).Of(stop.At))
                        : SheathingFindings.NotReached(on.Spec),
                };
        }
        catch (GeodesicException e)
        {
            return new(on, face, null, null) { Fault = CannotBeFollowed(on, e) };
        }
    }

    private static LostPlace Place(Laid on) =>
        new(on.Planked.HullOf(on.Holds[0]), on.Planked.Job.Hull.Panel);

    /// <summary>Divided into courses, with all that is drawn for them; null where it does not lie, the roll is too narrow or a line cannot be followed, which is then found.</summary>
    private static SheathedSide? Covered(Lying lying, SheathedSide? before, List<Finding> findings)
    {
        if (lying is not { Draped: { } draped, Edges: { } edges })
        {
            findings.Add(lying.Fault!);
            return null;
        }

        try
        {
            return Covered(lying.On, lying.Face, draped, edges, before, findings);
        }
        catch (GeodesicException e)
        {
            findings.Add(CannotBeFollowed(lying.On, e));
            return null;
        }
    }

    private static Finding CannotBeFollowed(Laid on, GeodesicException e) =>
        SheathingFindings.CannotBeFollowed(on.Spec, Place(on).Of(e.At));

    private static SheathedSide? Covered(
        Laid on,
        ClothFace face,
        DrapedCloth draped,
        FlatEdges edges,
        SheathedSide? before,
        List<Finding> findings
    )
    {
        ImmutableArray<Side> holds = on.Holds;
        SheathingSpec spec = on.Spec;
        ImmutableArray<Vec2> trim = Outline(spec, edges, 0),
            cut =

            [
                // A corner that is carried out when trimmed may be cut off square further out, where its two widths are nearer to each other.
                .. PlanarShapes.Together([Outline(spec, edges, spec.ExcessMm), trim], []),
            ];
        (ImmutableArray<double>, ImmutableArray<double>) joins =
            before is null ? ([], [])
            : before.Courses.Along ? (before.Courses.JoinsMm, [])
            : ([], before.Courses.JoinsMm);
        if (
            CoursePlanner.Of(
                cut,
                on.Cloth.WidestMm,
                spec.JoinLapMm,
                spec.Courses,
                joins,
                spec.StaggerMm
            )
            is not { } courses
        )
        {
            findings.Add(SheathingFindings.TooNarrow(spec, on.Cloth));
            return null;
        }

        FramingStrip[] strips =
        [
            .. on
                .Behind.Where(b => b.Only is not { } only || holds.Contains(only))
                .SelectMany(b =>
                    FramingStrips.Of(
                        b,
                        on.Planked.Job.Offsets,
                        face.Hull,
                        FramingPlanner.InnerFace(on.Planked, holds[0])
                    )
                ),
        ];
        return new(holds, draped.Net, draped.First, RegionArea.Of(face.Region), trim, cut, courses)
        {
            Edges = edges,
            Cross = ClothMarks.Cross(face, draped),
            Bays = BayShears.Of(face, draped.Net),
            Darts = ClothDarts.Of(
                draped.Net,
                cut,
                Drape.Bears(on.Cloth),
                on.Cloth.Weave == Weave.Square || draped.First is FirstLine.Point
            ),
            Marks = ClothMarks.Of(face, draped, spec, courses, strips),
            JoinsAcross = ClothMarks.Across(face, draped, spec, courses),
            LaidMm2 = LaidMm2(trim, courses, spec.JoinLapMm),
        };
    }

    /// <summary>The trimmed cloth, what laps in joins counted twice.</summary>
    private static double LaidMm2(ImmutableArray<Vec2> trim, ClothCourses courses, double lapMm)
    {
        double Across(Vec2 p) => courses.Along ? p.Y : p.X;
        return FlatPolygon.Area(trim)
            + courses.JoinsMm.Sum(j =>
                FlatPolygon.Area(
                    CoursePlanner.Clipped(
                        CoursePlanner.Clipped(trim, p => Across(p) - j + (lapMm / 2)),
                        p => j + (lapMm / 2) - Across(p)
                    )
                )
            );
    }

    private static ImmutableArray<Vec2> Outline(SheathingSpec spec, FlatEdges edges, double more) =>
        FlatOutline.Of(edges, (edge, at) => more + Past(spec, edge, at), more);

    /// <summary>How far cloth goes past an edge of the bottom once it is trimmed.</summary>
    private static double Past(SheathingSpec spec, PanelEdge edge, Vec3 at) =>
        edge switch
        {
            PanelEdge.Lower => ClothMarks.AtKeel(spec.Keel, at.Y, at.X),
            PanelEdge.Upper => spec.RoundChineMm,
            PanelEdge.Transom => spec.RoundTransomMm,
            _ => spec.RoundStemMm,
        };

    /// <summary>The places that the width of roll hangs on; none where the net does not reach them.</summary>
    private static Vec2[] Reach(ClothFace face, SheathingSpec spec, DrapedCloth draped) =>
        FlatEdges.On(face, draped) is { } edges
            ? [.. FlatOutline.Points(edges, (edge, at) => spec.ExcessMm + Past(spec, edge, at))]
            : [];
}
