using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>
/// Divides every plank longer than its stock: layer by layer from the inside out, both sides; where the same lies behind both, port is starboard's mirror image.
/// </summary>
public static class JointPlanner
{
    public static JointPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        if (plan.Job.Joints is not { } spec)
        {
            return null;
        }

        PlankLayerPlan[] layers = [.. plan.PlankLayers];
        List<SettledLayer?> starboard = SideJoints.Of(plan, spec, Side.Starboard, [], stop);
        int twins = layers.TakeWhile(l => PortJoints.AreTwins(plan, l)).Count();
        List<SettledLayer?> port = SideJoints.Of(
            plan,
            spec,
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
            .SelectMany(s => s.Findings(plan.Job.Units));
        return new(
            pieced,
            pieced.SelectMany(l => l.Planks).ToImmutableDictionary(p => p.PlankId),
            [.. JointFindings.OfSpec(plan, spec).Concat(findings).Distinct()]
        );
    }
}
