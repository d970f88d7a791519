using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>A prism: keel at (40, 20), chine at (1000, 340), stations 0 to 10 at every metre; one layer, nearly without thickness, at 45 degrees.</summary>
internal static class PrismTable
{
    public static readonly OffsetTable Offsets = new(
        [.. Enumerable.Range(0, 11).Select(i => new Station($"{i}", 1000 * i))],
        [Line("keel", 40, 20), Line("chine", 1000, 340)]
    );

    public static readonly PlankingJob Job = new(
        LengthUnit.Millimetre,
        Offsets,
        new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.Plumb),
        [PlankLayer.Of("skin", 0.01, 150, Heads.Aft, 45, 5000, Hold.Width, 7.5, 0.5, null)],
        EndRules.Default,
        BendLimits.Default
    );

    private static OffsetLine Line(string name, double b, double h) =>
        new(name, [], All(h), All(b));

    private static ImmutableArray<double?> All(double v) => [.. Enumerable.Repeat<double?>(v, 11)];
}
