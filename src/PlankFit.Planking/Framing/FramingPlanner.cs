using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Framing;

/// <summary>Finds where everything behind crosses every plank.</summary>
internal static class FramingPlanner
{
    /// <param name="before">Of another job: of layers that are the same, crossed by the same, the crossings are taken over.</param>
    public static FramingPlan Of(
        ImmutableArray<FramingSpec> things,
        Planked planked,
        FramingPlan? before,
        CancellationToken stop
    )
    {
        if (things.IsEmpty)
        {
            return FramingPlan.None;
        }

        bool apart = planked.PlankLayers.Any(l => l.PortApart is not null);
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>>.Builder byPlank =
            ImmutableDictionary.CreateBuilder<PlankId, ImmutableArray<FramingCrossing>>();
        HashSet<int> same = Same(things, planked, before);
        foreach (PlankLayerPlan layer in planked.PlankLayers.Where(l => same.Contains(l.Number)))
        {
            byPlank.AddRange(
                layer
                    .Starboard.Concat(layer.Port)
                    .Select(p => KeyValuePair.Create(p.Id, before!.ByPlank[p.Id]))
            );
        }

        SideFound starboard = OfSide(things, planked, Side.Starboard, !apart, same, byPlank, stop);
        SideFound? port = apart
            ? OfSide(things, planked, Side.Port, false, same, byPlank, stop)
            : null;
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>> all = byPlank.ToImmutable();
        ImmutableArray<Finding> findings =
        [
            .. FramingFindings.Of(
                things,
                planked,
                Side.Starboard,
                starboard.Face,
                starboard.Strips,
                all,
                apart
            ),
            .. FramingFindings.Of(
                things,
                planked,
                Side.Port,
                (port ?? starboard).Face,
                (port ?? starboard).Strips,
                all,
                apart
            ),
        ];
        ImmutableArray<Side> mirrored = apart ? [Side.Starboard] : [Side.Starboard, Side.Port];
        ImmutableArray<SnapFace> snaps =
        [
            .. SnapPlanner.Of(planked, Side.Starboard, starboard.Strips, mirrored),
            .. apart ? SnapPlanner.Of(planked, Side.Port, port!.Strips, [Side.Port]) : [],
        ];
        return new(all, [.. findings.Distinct()])
        {
            Planked = planked,
            Things = things,
            Snaps = snaps,
            UnderOutermost =
                snaps.LastOrDefault()
                ?? SnapPlanner.Under(
                    planked.PlankLayers.Last(),
                    planked,
                    Side.Starboard,
                    starboard.Strips,
                    mirrored
                ),
        };
    }

    /// <summary>Numbers of layers whose planks are the very same and are crossed by the same: the strips lie on the hull and the keel, whatever is laid on them.</summary>
    private static HashSet<int> Same(
        ImmutableArray<FramingSpec> things,
        Planked planked,
        FramingPlan? before
    ) =>
        before?.Planked is { } was
        && ReferenceEquals(was.StarboardKeel, planked.StarboardKeel)
        && ReferenceEquals(was.PortKeel, planked.PortKeel)
        && SameValue.Are(before.Things, things)
            ?
            [
                .. planked
                    .PlankLayers.Where(l => was.PlankLayers.Any(w => ReferenceEquals(l, w)))
                    .Select(l => l.Number),
            ]
            : [];

    /// <summary>What was worked out for one side.</summary>
    private sealed record SideFound(SectionFace Face, FramingStrip[] Strips);

    private static SideFound OfSide(
        ImmutableArray<FramingSpec> things,
        Planked planked,
        Side side,
        bool twins,
        HashSet<int> same,
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>>.Builder byPlank,
        CancellationToken stop
    )
    {
        SectionFace face = InnerFace(planked, side);
        FramingStrip[] strips =
        [
            .. things.SelectMany(b =>
                FramingStrips.Of(b, planked.Job.Offsets, planked.HullOf(side), face)
            ),
        ];
        Plank[] planks =
        [
            .. planked.PlankLayers.Where(l => !same.Contains(l.Number)).SelectMany(l => l.On(side)),
        ];
        var found = new FramingCrossing[planks.Length][];
        Parallel.For(
            0,
            planks.Length,
            new ParallelOptions { CancellationToken = stop },
            i => found[i] = [.. strips.SelectMany(new PlankCrossing(planks[i]).Of)]
        );
        for (int i = 0; i < planks.Length; i++)
        {
            byPlank[planks[i].Id] =
            [
                .. found[i].Where(c => c.Of.Only is null || c.Of.Only == side),
            ];
            if (twins)
            {
                byPlank[planks[i].Id.Twin] =
                [
                    .. found[i].Where(c => c.Of.Only != Side.Starboard).Select(Mirrored),
                ];
            }
        }

        return new(face, strips);
    }

    /// <summary>The inner face of the whole stack, where things are fitted and measured.</summary>
    internal static SectionFace InnerFace(Planked planked, Side side)
    {
        PlankingJob job = planked.Job;
        PlankLayerSpec first = planked.PlankLayers.First().Planks;
        HullSurface hull = planked.HullOf(side);
        return SectionFace.At(hull, Stack.Of(job).InnerMm, planked.KeelOf(side).SideOf(first));
    }

    /// <summary>The same on the port twin of the plank.</summary>
    private static FramingCrossing Mirrored(FramingCrossing c)
    {
        ImmutableArray<Vec2> centre = Mirror(c.Centre),
            one = Mirror(c.OtherEdge),
            other = Mirror(c.OneEdge);
        ImmutableArray<Vec2> line =
            !centre.IsEmpty ? centre
            : !one.IsEmpty ? one
            : other;
        FramingCrossing mirrored = new(c.Of, centre, one, other, [.. Mirror(c.Cover).Reverse()]);
        return line.IsEmpty ? mirrored : PlankCrossing.Oriented(mirrored, line);
    }

    private static ImmutableArray<Vec2> Mirror(ImmutableArray<Vec2> line) =>
        [.. line.Select(p => new Vec2(p.X, -p.Y))];
}
