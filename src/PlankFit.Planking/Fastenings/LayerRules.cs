using System.Collections.Immutable;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>The rule and the lengths of every plank layer.</summary>
internal static class LayerRules
{
    public static ImmutableArray<LayerFastenings> Of(
        FasteningSpec spec,
        Planked planked,
        FramingPlan behind
    )
    {
        ImmutableArray<LayerFastenings>.Builder rules =
            ImmutableArray.CreateBuilder<LayerFastenings>();
        string[] backings = [.. behind.Carrying];
        double step = FasteningLengths.StepMm(planked.Job.WrittenIn),
            whole = 0,
            since = 0;
        foreach (LayerPlan layer in planked.Layers)
        {
            whole += layer.Spec.ThicknessMm;
            since += layer.Spec.ThicknessMm;
            if (layer is not PlankLayerPlan planks)
            {
                continue;
            }

            var rule = FasteningRule.Of(
                spec.Of(planks.Planks.Name),
                planks.Planks.ThicknessMm,
                rules.Count == 0
            );
            ImmutableArray<ChosenLength>.Builder lengths =
                ImmutableArray.CreateBuilder<ChosenLength>();
            if (rule.Kind != FasteningKind.None)
            {
                lengths.AddRange(
                    backings.Select(b =>
                        FasteningLengths.IntoBacking(rule, b, whole, spec.DepthOf(b), step)
                    )
                );
            }

            if (rule.PullDown is { } down)
            {
                lengths.Add(FasteningLengths.PullDown(down, whole, since, step));
            }

            rules.Add(new(planks.Number, planks.Planks.Name, rule, lengths.ToImmutable()));
            since = 0;
        }

        return rules.ToImmutable();
    }
}
