using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>When a short bite is told, which gaps are named, and what is named as their cause, on a short plane bottom with planks at 45°.</summary>
public sealed class FasteningToldTests
{
    private static readonly FramingSpec Stringer = Along("stringer", FramingKind.Stringer, 50);

    private static readonly PullDownWish NoPullDown = new(
        true,
        null,
        null,
        null,
        null,
        null,
        null,
        null
    );

    /// <summary>
    /// 30 mm through a pad of 9 and a skin of 9 bite 12 mm. Up to 12.05 wanted that is what a list says, which has tenths of a millimetre; beyond, it is told.
    /// </summary>
    [Theory]
    [InlineData(12, false)]
    [InlineData(12.04, false)]
    [InlineData(12.06, true)]
    [InlineData(13, true)]
    [InlineData(25, true)]
    public void AShortBiteIsToldFromATwentiethOfAMillimetre(double wantedMm, bool told)
    {
        BottomPlan plan = Planned(
            new()
            {
                BiteMm = wantedMm,
                LengthsMm = [30],
                PullDown = NoPullDown,
            },
            Stringer
        );
        Assert.Equal(
            12,
            plan.Fastenings!.Layers[0].Lengths.Single(l => l.Use == FasteningUse.Backing).BiteMm,
            1e-9
        );
        Finding[] said =
        [
            .. plan.Findings.Where(f =>
                f.Where == "layer inner" && f.Message.Contains("long and bite ")
            ),
        ];
        Assert.Equal(told ? 1 : 0, said.Length);
        Assert.All(said, f => Assert.Equal(Severity.Warning, f.Severity));
        // Never by two figures that read alike.
        string words =
            wantedMm < 12.25
                ? "bite 0.06 mm less than the 12 mm that is wanted"
                : $"bite 12 mm where {LengthText.ForPaper(wantedMm, LengthUnit.Millimetre)} is wanted";
        Assert.All(said, f => Assert.Contains(words, f.Message, StringComparison.Ordinal));
    }

    /// <summary>Of many gaps the nine widest are named, widest first: none that is not named is wider than one that is.</summary>
    [Fact]
    public void TheWidestGapsAreNamedWidestFirst()
    {
        BottomPlan plan = Planned(
            new()
            {
                SpacingMm = 75,
                EdgeMm = 30,
                MarginMm = 20,
                PullDown = NoPullDown,
            },
            Stringer,
            Along("gap a", FramingKind.Open, 100) with
            {
                FromMm = 900,
                ToMm = 1000,
            },
            Along("gap b", FramingKind.Open, 100) with
            {
                FromMm = 1500,
                ToMm = 1700,
            },
            Along("gap c", FramingKind.Open, 100) with
            {
                FromMm = 2100,
                ToMm = 2350,
            }
        );
        string said = plan
            .Findings.Single(f =>
                f.Where == "layer inner"
                && f.Message.StartsWith("along stringer fastenings", StringComparison.Ordinal)
            )
            .Message;
        TimberGap[] gaps =
        [
            .. plan.Fastenings!.Gaps.Where(g => g.Layer == 1 && g.Side == Side.Starboard)
                .OrderByDescending(g => g.GapMm),
        ];
        Assert.True(gaps.Length > 11, $"{gaps.Length}");

        // What lies open is 100, 200 and 250 mm long, with 27 mm kept from at either end; between planks it is 84.9 mm.
        Assert.True(gaps[2].GapMm > 100 + 54 && gaps[3].GapMm < 100, $"{gaps[2]} {gaps[3]}");
        int at = 0;
        foreach (TimberGap gap in gaps.Take(3))
        {
            int next = said.IndexOf(
                $"{LengthText.ForPaper(gap.GapMm, LengthUnit.Millimetre)}",
                at,
                StringComparison.Ordinal
            );
            Assert.True(next >= at, $"{gap} in {said}");
            at = next + 1;
        }
    }

    /// <summary>What is the same on both sides is told once, though on one side there is more to tell; what is alike on the whole timber is told of starboard, and port likewise.</summary>
    [Fact]
    public void AGapOnBothSidesIsToldOnce()
    {
        FasteningSettings settings = new() { SpacingMm = 75, PullDown = NoPullDown };
        FramingSpec one = Along("one", FramingKind.Open, 200) with { FromMm = 900, ToMm = 1000 },
            two = Along("two", FramingKind.Open, 200) with { FromMm = 1800, ToMm = 2050 };
        string Told(FramingSpec other)
        {
            BottomPlan plan = Planned(settings, Stringer, one, other);
            return plan
                .Findings.Single(f =>
                    f.Where == "layer inner"
                    && f.Message.StartsWith("along stringer fastenings", StringComparison.Ordinal)
                )
                .Message;
        }

        string alike = Told(two),
            sided = Told(two with { Only = Side.Starboard });
        Assert.Contains(" in 2 places: ", alike, StringComparison.Ordinal);
        Assert.EndsWith("; to port likewise", alike, StringComparison.Ordinal);
        Assert.DoesNotContain("P1-", alike, StringComparison.Ordinal);
        Assert.Contains(" in 3 places: ", sided, StringComparison.Ordinal);
        Assert.DoesNotContain("likewise", sided, StringComparison.Ordinal);
        Assert.DoesNotContain("P1-", sided, StringComparison.Ordinal);
        Assert.Matches(@"; then (in|from) S1-[^;]*, and to port, \d+", sided);
    }

    /// <summary>A joint has a name on each side: by it a gap is the twin of the other's, and by no other joint, thing, plank or figure.</summary>
    [Fact]
    public void ATwinIsKnownByItsJoint()
    {
        PlankId plank = Named.Plank("S1-08");
        Hindrance hindered = new(Obstacle.Of(new JointId(plank, 1)), 3, 12);
        TimberGap gap = new(1, Side.Starboard, "stringer", 94, plank, null, hindered),
            twin = gap with { Side = Side.Port, From = plank.Twin, Hindered = hindered.ToPort() };
        Assert.True(gap.IsTwinOf(twin) && twin.IsTwinOf(gap));
        Assert.False(gap.IsTwinOf(gap));
        Assert.All(
            new[]
            {
                twin with
                {
                    GapMm = 94.2,
                },
                twin with
                {
                    From = null,
                },
                twin with
                {
                    To = plank.Twin,
                },
                twin with
                {
                    Backing = "chine log",
                },
                twin with
                {
                    Layer = 2,
                },
                twin with
                {
                    Hindered = hindered,
                },
                twin with
                {
                    Hindered = hindered with { By = "the after seam" },
                },
            },
            other => Assert.False(gap.IsTwinOf(other), $"{other}")
        );
        FasteningGap shorter = new("stringer", 0, 94, hindered);
        Assert.True(shorter.IsTwinOf(shorter with { Hindered = hindered.ToPort() }));
        Assert.False(shorter.IsTwinOf(shorter));
        Assert.False(shorter.IsTwinOf(shorter with { Hindered = hindered.ToPort(), Placed = 1 }));
    }

    /// <summary>A gap on a timber's middle is told once, along the timber, and not again of the plank that it lies on.</summary>
    [Fact]
    public void AGapOnTheMiddleIsToldAlongTheTimberOnly()
    {
        const double from = 1500,
            to = 1600;
        BottomPlan plan = Planned(
            new() { SpacingMm = 54, PullDown = NoPullDown },
            Stringer,
            Along("shaft", FramingKind.Open, 200) with
            {
                FromMm = from,
                ToMm = to,
            }
        );
        (PlankId Plank, double X)[] set =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.SelectMany(p =>
                    plan.Fastenings!.On(p.Id)!.Points.Select(f => (p.Id, p.Map.Point(f.At).X))
                )
                .OrderBy(s => s.X),
        ];
        (PlankId Plank, double X) before = set.Last(s => s.X < from),
            after = set.First(s => s.X > to);
        Assert.True(after.X - before.X > 100 + 54);
        TimberGap told = Assert.Single(
            plan.Fastenings!.Gaps,
            g => g.Layer == 1 && g.Side == Side.Starboard && g.GapMm > 100
        );
        Assert.Equal(after.X - before.X, told.GapMm, 0.05);
        Assert.Equal<(PlankId?, PlankId?)>((before.Plank, after.Plank), (told.From, told.To));
        Assert.DoesNotContain(
            plan.Fastenings.ByPlank.Values.SelectMany(p => p.Short),
            s => s.Placed > 0
        );
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.StartsWith("on stringer fastenings are", StringComparison.Ordinal)
        );
    }

    private static FramingSpec Along(string name, FramingKind kind, double widthMm) =>
        new(name, kind, new FramingLine.FromKeel(300), widthMm, null, null);

    private static BottomPlan Planned(FasteningSettings wish, params FramingSpec[] behind) =>
        WholeBottomTests.Planned(
            PrismaticPlan
                .Build(
                    new Prism(
                        LengthMm: 3000,
                        HalfBeamMm: 700,
                        MasterMm: 1500,
                        KeelHalfBreadthMm: 40
                    )
                )
                .Job with
            {
                Framing = [.. behind],
                Fastenings = new(
                    wish,
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    45,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );
}
