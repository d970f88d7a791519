using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// A timber on one side only changes the fastenings of the planks that it crosses, and of no others: port's are starboard's mirrored there, to the last digit, or what
/// is chosen by a hair is chosen otherwise on either side, and twins that one card could serve have two.
/// </summary>
public sealed class OneSidedTimberTests
{
    private static readonly FramingSpec Web = new(
        "web frame",
        FramingKind.Frame,
        new FramingLine.AtPosition(5400),
        60,
        null,
        null
    )
    {
        Only = Side.Starboard,
    };

    private static readonly FramingSpec Bearer = new(
        "bearer",
        FramingKind.Stringer,
        new FramingLine.FromKeel(420),
        50,
        1400,
        2600
    )
    {
        Only = Side.Port,
    };

    [Fact]
    public void OnTheLaunchPlanksThatItDoesNotCrossAreMirrored()
    {
        BottomPlan demo = DemoPlans.Of("survey-launch");
        ImmutableArray<FramingSpec> framing =
        [
            .. demo.Job.Framing.Where(f => f.Only is null),
            Web,
            Bearer,
        ];
        BottomPlan plan = WholeBottomTests.Planned(
            demo.Job with
            {
                Nest = null,
                Framing = framing,
            }
        );
        Plank[] starboard = [.. plan.PlankLayers.SelectMany(l => l.Starboard)],
            uncrossed = [.. starboard.Where(p => Sided(plan, p.Id) == 0)];
        Assert.InRange(starboard.Length - uncrossed.Length, 15, 40);
        Assert.All(
            starboard.Except(uncrossed),
            p => Assert.NotEqual(Places(plan, p.Id), Places(plan, p.Id.Twin))
        );
        Assert.True(uncrossed.Sum(p => Places(plan, p.Id).Length) > 1000);
        Assert.All(uncrossed, p => Assert.Equal(Places(plan, p.Id), Places(plan, p.Id.Twin)));
    }

    private static int Sided(BottomPlan plan, PlankId id) =>
        plan.Framing.On(id).Concat(plan.Framing.On(id.Twin)).Count(c => c.Of.Only is not null);

    /// <summary>In the starboard frame, as they were set.</summary>
    private static Vec2[] Places(BottomPlan plan, PlankId id) =>
        [
            .. plan.Fastenings!.On(id)!
                .Points.Select(f => id.Side == Side.Port ? new Vec2(f.At.X, -f.At.Y) : f.At),
        ];
}
