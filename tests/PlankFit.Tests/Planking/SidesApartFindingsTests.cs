using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Where the sides are laid apart, what is found in a layer is said of one of them, and counts are its own.</summary>
public sealed class SidesApartFindingsTests
{
    [Fact]
    public void AFindingOfALayerSaysOfWhichSide()
    {
        BottomPlan plan = DemoPlans.Of("tender-as-she-stands");
        string[] layers = [.. plan.PlankLayers.Select(l => $"layer {l.Spec.Name}")];
        Finding[] angles =
        [
            .. plan.Findings.Where(f =>
                f.Message.Contains("meet the keel at", StringComparison.Ordinal)
            ),
        ];
        Assert.Equal(
            layers
                .SelectMany(l => new[] { $"{l}, port", $"{l}, starboard" })
                .Order(StringComparer.Ordinal),
            angles.Select(f => f.Where).Order(StringComparer.Ordinal)
        );
        Assert.All(
            angles,
            f => Assert.DoesNotContain("a side keep", f.Message, StringComparison.Ordinal)
        );
        Assert.Contains(
            angles,
            f => f.Message.Contains("1 tapered plank keeps", StringComparison.Ordinal)
        );
    }
}
