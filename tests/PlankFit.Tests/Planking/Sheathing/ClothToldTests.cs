using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>What is told of a cloth before it is cut, against the plan and the job.</summary>
public sealed class ClothToldTests
{
    private static readonly Job Bare = SheathedJobs.Bare(DemoPlans.Of("survey-launch").Job);

    /// <summary>A roll that lacks less than 150 mm of one course: by how much, rounded so that it suffices.</summary>
    [Fact]
    public void ARollThatIsNearlyWideEnoughIsTold()
    {
        const double lacks = 149.3;
        string told = Assert.Single(
            Told(Plan(Wide.Value - lacks)),
            m => m.Contains("too narrow for one course")
        );
        Assert.StartsWith("its roll is only 149.5 mm too narrow for one course", told);
    }

    [Fact]
    public void OneThatLacksMoreIsNot() =>
        Assert.DoesNotContain(Told(Plan(Wide.Value - 151)), m => m.Contains("too narrow"));

    /// <summary>Lapped 50 past the centre line from both sides a cloth of 1 mm is twice 50 wide and twice 1 thick on the keel.</summary>
    [Theory]
    [InlineData(
        LengthUnit.Millimetre,
        "port and starboard lap by 100 mm on the keel, 2 mm thick there"
    )]
    [InlineData(
        LengthUnit.Foot,
        "port and starboard lap by 3 15/16\" on the keel, 3/32\" thick there"
    )]
    public void WhatLapsOnTheKeelIsTold(LengthUnit unit, string told) =>
        Assert.Contains(Told(Plan(1270, s => s, unit)), m => m.Contains(told));

    [Theory]
    [InlineData(
        0,
        0,
        "it crosses the keel with threads both ways, and stops at the chine, the transom"
    )]
    [InlineData(
        0,
        60,
        "it crosses the keel, the transom with threads both ways, and stops at the chine"
    )]
    [InlineData(
        60,
        0,
        "it crosses the keel, the chine with threads both ways, and stops at the transom"
    )]
    public void WhatItCrossesIsTold(double chine, double transom, string told) =>
        Assert.Contains(
            Told(Plan(1270, s => s with { RoundChineMm = chine, RoundTransomMm = transom })),
            m => m == told
        );

    /// <summary>A piece that is longer than any roll wants a longer one; where rolls on hand run out it wants more of them.</summary>
    [Fact]
    public void WhyAPieceHasNoPlaceIsTold()
    {
        string tooLong = Assert.Single(
            Told(Plan(new ClothRoll(1270, 5_000))),
            m => m.Contains("S-C1")
        );
        Assert.Equal(
            "no roll of 'stitched 600' is long enough for S-C1, P-C1: the longest has 5000 mm; give a longer roll, or courses = \"across\"",
            tooLong
        );
        string tooFew = Assert.Single(
            Told(Plan(new ClothRoll(1270, 9_000) { Count = 1 })),
            m => m.Contains("-C1")
        );
        Assert.StartsWith("the rolls of 'stitched 600' on hand do not suffice: ", tooFew);
    }

    /// <summary>What one course takes of a roll's width, mm.</summary>
    private static readonly Lazy<double> Wide = new(() =>
    {
        SheathedSide side = Plan(1270).Layers[0].Sides[0];
        return side.Cut.Max(p => p.Y) - side.Cut.Min(p => p.Y);
    });

    private static IEnumerable<string> Told(SheathingPlan plan) =>
        plan.Findings.Select(f => f.Message);

    private static SheathingPlan Plan(double roll) => Plan(new ClothRoll(roll, 50_000));

    private static SheathingPlan Plan(ClothRoll roll) => Plan(roll, s => s, LengthUnit.Millimetre);

    private static SheathingPlan Plan(
        double roll,
        Func<SheathingSpec, SheathingSpec> how,
        LengthUnit unit = LengthUnit.Millimetre
    ) => Plan(new ClothRoll(roll, 50_000), how, unit);

    private static SheathingPlan Plan(
        ClothRoll roll,
        Func<SheathingSpec, SheathingSpec> how,
        LengthUnit unit
    ) =>
        BottomPlanner
            .Plan(
                SheathedJobs.Outside(
                    Bare,
                    s =>
                        how(s) with
                        {
                            FirstAlong = new FirstLine.Straight(0.5, -2),
                            Courses = CourseRule.Along,
                        }
                ) with
                {
                    Units = unit,
                    Cloths = [SheathedJobs.Stitched with { Rolls = [roll] }],
                }
            )
            .Plan!.Sheathing!;
}
