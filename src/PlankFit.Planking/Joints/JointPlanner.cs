using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>
/// Divides every plank longer than its stock: layer by layer from the inside out, both sides; where the same lies behind both, port is starboard's mirror image.
/// </summary>
public static class JointPlanner
{
    public static JointPlan Of(
        JointSpec spec,
        Planked planked,
        FramingPlan behind,
        CancellationToken stop
    )
    {
        PlankLayerPlan[] layers = [.. planked.PlankLayers];
        List<SettledLayer?> starboard = SideJoints.Of(
            spec,
            planked,
            behind,
            Side.Starboard,
            [],
            stop
        );
        int twins = layers.TakeWhile(l => PortJoints.AreTwins(behind, l)).Count();
        List<SettledLayer?> port = SideJoints.Of(
            spec,
            planked,
            behind,
            Side.Port,
            starboard.Take(twins).Select(s => s?.Mirrored()),
            stop
        );
        ImmutableArray<JointedLayer> pieced =
        [
            .. starboard
                .Zip(port)
                .SelectMany(pair => new[] { pair.First?.Pieced, pair.Second?.Pieced })
                .OfType<JointedLayer>(),
        ];
        IEnumerable<Finding> findings = starboard
            .Zip(port)
            .SelectMany((pair, i) => i < twins ? [pair.First] : new[] { pair.First, pair.Second })
            .OfType<SettledLayer>()
            .SelectMany(s => s.Findings(planked.Job.Units));
        return new(
            pieced,
            pieced.SelectMany(l => l.Planks).ToImmutableDictionary(p => p.PlankId),
            [.. JointFindings.OfSpec(spec, planked, behind).Concat(findings).Distinct()]
        );
    }
}
