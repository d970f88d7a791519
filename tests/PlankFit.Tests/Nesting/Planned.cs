using System.Collections.Immutable;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Nesting;

/// <summary>A plan of cutting as the planner makes it, in millimetres and with nobody looking on.</summary>
internal static class Planned
{
    public static NestPlan Of(NestSpec spec, ImmutableArray<SawPiece> pieces) =>
        NestPlanner.Of(
            spec,
            pieces,
            LengthUnit.Millimetre,
            new ClassicalCases.Nowhere(),
            TestContext.Current.CancellationToken
        );

    /// <summary>One that keeps all laws.</summary>
    public static NestPlan Lawful(NestSpec spec, ImmutableArray<SawPiece> pieces)
    {
        NestPlan plan = Of(spec, pieces);
        Assert.Empty(CutLaws.Broken(plan, pieces));
        return plan;
    }
}
