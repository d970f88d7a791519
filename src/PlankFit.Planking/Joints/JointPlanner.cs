using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>
/// Divides every plank longer than its stock: layer by layer from the inside out, each with the one below already settled, both sides.
/// </summary>
public static class JointPlanner
{
    public static JointPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        if (plan.Job.Joints is not { } spec)
        {
            return null;
        }

        var layers = ImmutableArray.CreateBuilder<JointedLayer>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(JointFindings.OfSpec(plan, spec));
        (PlankLayerPlan Layer, JointedLayer? Starboard, JointedLayer? Port)? below = null;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            JointedLayer? starboard = null,
                port = null;
            if (spec.Of(layer.Spec.Name) is { } stock)
            {
                ImmutableArray<JointRule> rules = spec.RulesFor(stock.Kind);
                var side = Settled.Of(
                    plan,
                    layer,
                    Side.Starboard,
                    stock,
                    rules,
                    below is { } s ? (s.Layer, s.Starboard) : null,
                    stop
                );
                starboard = side.Layer;
                findings.AddRange(side.Findings(plan.Job.Units));
                if (PortJoints.AreTwins(plan, layer))
                {
                    port = side.ForPort;
                }
                else
                {
                    side = Settled.Of(
                        plan,
                        layer,
                        Side.Port,
                        stock,
                        rules,
                        below is { } p ? (p.Layer, p.Port) : null,
                        stop
                    );
                    port = side.Layer;
                    findings.AddRange(side.Findings(plan.Job.Units));
                }
            }

            layers.AddRange(new[] { starboard, port }.OfType<JointedLayer>());
            below = (layer, starboard, port);
        }

        return new(
            layers.ToImmutable(),
            layers.SelectMany(l => l.Planks).ToImmutableDictionary(p => p.PlankId),
            [.. findings.Distinct()]
        );
    }

    /// <summary>A layer and side with its joints chosen, or with what stands in their way.</summary>
    private sealed record Settled(
        LayerCase Case,
        ImmutableArray<JointRule> Rules,
        WayChoice Choice,
        bool Thinned,
        Relief? Relief
    )
    {
        public static Settled Of(
            BottomPlan plan,
            PlankLayerPlan layer,
            Side side,
            JointStock stock,
            ImmutableArray<JointRule> rules,
            (PlankLayerPlan Layer, JointedLayer? Pieced)? below,
            CancellationToken stop
        )
        {
            LayerCase given = LayerCase.Of(plan, layer, side, stock, below);
            (WayChoice choice, bool thinned) = LayerChoice.Of(given, rules, stop);
            return new(
                given,
                rules,
                choice,
                thinned,
                choice.Found ? null : RuleRelief.Of(given, rules, stop)
            );
        }

        public JointedLayer? Layer =>
            Choice.Found ? LayerJoints.Of(Case, Rules, Choice, Thinned) : null;

        public JointedLayer? ForPort
        {
            get
            {
                if (!Choice.Found)
                {
                    return null;
                }

                (LayerCase port, WayChoice choice) = PortJoints.Of(Case, Choice);
                return LayerJoints.Of(port, Rules, choice, Thinned);
            }
        }

        public IEnumerable<Finding> Findings(LengthUnit units) =>
            JointFindings.Of(Case, Rules, Choice, Thinned, Layer, Relief, units);
    }
}
