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
        SheathingSpec[] inOrder =
        [
            .. planked.Job.Layers.SelectMany(l => sheathing.Where(s => s.Layer == l.Name)),
        ];
        ImmutableArray<SheathedLayer>.Builder layers =
            ImmutableArray.CreateBuilder<SheathedLayer>();
        List<Finding> findings = [];
        SheathedSide? before = null;
        foreach (SheathingSpec spec in inOrder)
        {
            stop.ThrowIfCancellationRequested();
            ClothSpec cloth = cloths.First(c => c.Name == spec.Cloth);
            var on = new Laid(planked, spec, cloth, behind, layers.Count + 1);
            ImmutableArray<ImmutableArray<Side>> sides = apart
                ?
                [
                    [Side.Starboard],
                    [Side.Port],
                ]
                :
                [
                    [Side.Starboard, Side.Port],
                ];
            SheathedSide?[] laid = [.. sides.Select(s => OfSide(on, s, before, findings))];
            if (laid.Any(s => s is null))
            {
                continue;
            }

            StackedLayer stacked = Stack
                .Of(planked.Job)
                .Layers.First(l => l.Spec.Name == spec.Layer);
            var layer = new SheathedLayer(
                on.Number,
                spec,
                cloth,
                stacked.Spec.ThicknessMm,
                stacked.InnerMm,
                [.. laid.OfType<SheathedSide>()]
            );
            layer = layer with { Pieces = ClothPieces.Of(layer) };
            before = layer.Sides[0];
            layers.Add(layer);
        }

        ImmutableArray<RollPlan> rolls =
        [
            .. cloths
                .Where(c => layers.Any(l => l.Cloth.Name == c.Name))
                .Select(c =>
                    RollPlanner.Of(
                        c,
                        [.. layers.Where(l => l.Cloth.Name == c.Name).SelectMany(l => l.Pieces)]
                    )
                ),
        ];
        return new(
            layers.ToImmutable(),
            rolls,
            [.. findings, .. SheathingFindings.Of(layers, rolls, planked.Job)]
        )
        {
            Unlaid = [.. inOrder.Select(s => s.Layer).Except(layers.Select(l => l.Name))],
        };
    }

    /// <summary>One layer on its way.</summary>
    private sealed record Laid(
        Planked Planked,
        SheathingSpec Spec,
        ClothSpec Cloth,
        ImmutableArray<FramingSpec> Behind,
        int Number
    );

    /// <summary>Null where it cannot be laid, which is then found.</summary>
    private static SheathedSide? OfSide(
        Laid on,
        ImmutableArray<Side> holds,
        SheathedSide? before,
        List<Finding> findings
    )
    {
        try
        {
            var face = ClothFace.Of(on.Planked, on.Spec.Layer, holds[0]);
            DrapedCloth draped = ClothDraping.Of(
                face,
                on.Spec,
                on.Cloth,
                d => Reach(face, on.Spec, d)
            );
            return FlatEdges.On(face, draped) is { } edges
                ? Covered(on, holds, face, draped, edges, before, findings)
                : Unlaid(on, holds, draped, findings);
        }
        catch (GeodesicException e)
        {
            findings.Add(SheathingFindings.CannotBeFollowed(on.Spec, Place(on, holds).Of(e.At)));
            return null;
        }
    }

    private static LostPlace Place(Laid on, ImmutableArray<Side> holds) =>
        new(on.Planked.HullOf(holds[0]), on.Planked.Job.Hull.Panel);

    private static SheathedSide? Unlaid(
        Laid on,
        ImmutableArray<Side> holds,
        DrapedCloth draped,
        List<Finding> findings
    )
    {
        findings.Add(
            draped.Net.Stop is { } stop
                ? SheathingFindings.Stopped(on.Spec, stop, Place(on, holds).Of(stop.At))
                : SheathingFindings.NotReached(on.Spec)
        );
        return null;
    }

    private static SheathedSide? Covered(
        Laid on,
        ImmutableArray<Side> holds,
        ClothFace face,
        DrapedCloth draped,
        FlatEdges edges,
        SheathedSide? before,
        List<Finding> findings
    )
    {
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
        FlatOutline.Of(edges, (edge, at) => more + Past(spec, edge, at));

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
