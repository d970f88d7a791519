using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Framing;

/// <summary>What is told of things behind that cannot be as they are said to be, and nothing of those that can.</summary>
public sealed class FramingFindingsTests
{
    [Fact]
    public void SoundThingsDrawNoFinding() =>
        Assert.Empty(
            Found(
                Stringer("a", 300),
                Stringer("b", 345.6),
                new("f", FramingKind.Frame, new FramingLine.AtPosition(2000), 40, null, null),
                Place("hole", FramingKind.Open, 150, 3000)
            )
        );

    [Fact]
    public void AThingThatMissesTheBottomIsTold() =>
        Tells(Found(Stringer("far", 4000)), Severity.Warning, "behind far", "crosses no plank");

    [Fact]
    public void AFrameBeyondTheTransomIsTold() =>
        Tells(
            Found(
                new FramingSpec(
                    "late",
                    FramingKind.Frame,
                    new FramingLine.AtPosition(9000),
                    40,
                    null,
                    null
                )
            ),
            Severity.Warning,
            "behind late",
            "crosses no plank"
        );

    [Fact]
    public void TwoStringersInOnePlaceAreTold() =>
        Tells(
            Found(Stringer("a", 300), Stringer("b", 330)),
            Severity.Warning,
            "behind a",
            "30 mm",
            "b",
            "45 mm"
        );

    [Fact]
    public void AHoleBehindAStringerIsTold()
    {
        ImmutableArray<Finding> found = Found(
            Stringer("a", 300),
            Place("hole", FramingKind.Open, 300, 3000)
        );
        Tells(found, Severity.Warning, "behind hole", "kept open", "a crosses it", "S1-");

        // Once, though it is so to port as well.
        Assert.Single(found);
    }

    [Fact]
    public void AStringerOfPortAloneDoesNotCloseAHoleToStarboard() =>
        Assert.Empty(
            Found(
                Stringer("a", 300) with
                {
                    Only = Side.Port,
                },
                Place("hole", FramingKind.Open, 300, 3000) with
                {
                    Only = Side.Starboard,
                }
            )
        );

    /// <summary>Where the launch narrows forward a line 700 mm from the keel's side leaves the bottom at the chine.</summary>
    [Fact]
    public void ALineThatRunsOffTheBottomIsTold()
    {
        ImmutableArray<Finding> open = Launch(Stringer("wide", 700)),
            meant = Launch(Stringer("wide", 700) with { FromMm = 300 });
        Tells(open, Severity.Note, "behind wide", "runs off the bottom ahead of", "station");
        Tells(meant, Severity.Warning, "behind wide", "runs off the bottom ahead of");
    }

    private static FramingSpec Stringer(string name, double mm) =>
        new(name, FramingKind.Stringer, new FramingLine.FromKeel(mm), 45, null, null);

    private static FramingSpec Place(string name, FramingKind kind, double mm, double x) =>
        new(
            name,
            kind,
            new FramingLine.Spot(new FramingLine.FromKeel(mm), new FramingLine.AtPosition(x)),
            80,
            null,
            null
        )
        {
            LengthMm = 80,
        };

    private static ImmutableArray<Finding> Found(params ImmutableArray<FramingSpec> things) =>
        WholeBottomTests
            .Planned(PrismaticPlan.Build().Job with { Framing = things })
            .Framing.Findings;

    private static ImmutableArray<Finding> Launch(FramingSpec thing) =>
        WholeBottomTests
            .Planned(DemoPlans.Of("survey-launch").Job with { Framing = [thing] })
            .Framing.Findings;

    private static void Tells(
        ImmutableArray<Finding> found,
        Severity severity,
        string where,
        params string[] words
    ) =>
        Assert.True(
            found.Any(f =>
                f.Severity == severity && f.Where == where && words.All(f.Message.Contains)
            ),
            string.Join("\n", found)
        );
}
