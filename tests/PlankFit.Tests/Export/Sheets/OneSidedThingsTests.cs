using PlankFit.Export.Cards;
using PlankFit.Export.Fastenings;
using PlankFit.Export.Framing;
using PlankFit.Export.Patterns;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What lies behind on one side only, a place to starboard and a stringer to port, is drawn there alone and said to be so on every view that shows it.</summary>
public sealed class OneSidedThingsTests
{
    private const string SeaCock = "keep open: sea cock (starboard only)";
    private const string Bearer = "engine bearer (port only)";

    private static readonly Lazy<BottomPlan> Planned = new(() =>
    {
        Job job = DemoPlans.Of("survey-launch").Job;
        var bearer = new FramingSpec(
            "engine bearer",
            FramingKind.Stringer,
            new FramingLine.FromKeel(420),
            50,
            4600,
            6100
        )
        {
            Only = Side.Port,
        };
        return BottomPlanner
            .Plan(
                job with
                {
                    Nest = null,
                    Framing = job.Framing.Add(bearer),
                },
                null,
                CancellationToken.None
            )
            .Plan!;
    });

    private static BottomPlan Plan => Planned.Value;

    public static TheoryData<int> Layers => [1, 2];

    private static PlankLayerPlan Layer(int number) =>
        Plan.PlankLayers.First(l => l.Number == number);

    [Theory]
    [MemberData(nameof(Layers))]
    public void ThePlanDrawsEachOnItsOwnSide(int number) =>
        AreOnTheirSides(BottomPlanView.Of(Plan, Layer(number)));

    [Theory]
    [MemberData(nameof(Layers))]
    public void TheFasteningPlanDrawsEachOnItsOwnSide(int number) =>
        AreOnTheirSides(FasteningPlanView.Of(Plan, Plan.Fastenings!, Layer(number)));

    [Theory]
    [MemberData(nameof(Layers))]
    public void TheShellExpansionIsOfStarboardAndSaysWhatPortHas(int number)
    {
        Drawing sheet = ShellExpansion.Of(Plan, Layer(number));
        Assert.Contains(SeaCock, Words(sheet));
        Assert.DoesNotContain(Bearer, Words(sheet));
        Assert.Contains(Bearer, string.Join(' ', Words(sheet)));
    }

    [Fact]
    public void LinesToSnapSayTheSide()
    {
        string[] words = [.. SnapPages.Of(Plan, Plan.Framing).SelectMany(Words)];
        Assert.Contains(words, w => w.StartsWith(SeaCock, StringComparison.Ordinal));
        Assert.Contains(Bearer, words);
    }

    [Fact]
    public void SettingUpSaysTheSideOfAStringer() =>
        Assert.Contains(
            SettingUpPages.Of(Plan.Job, Plan.SettingUp!).SelectMany(Words),
            w => w.Contains(Bearer, StringComparison.Ordinal)
        );

    /// <summary>Cards, the list of what lies behind and patterns of both kinds.</summary>
    [Fact]
    public void PlanksOfItsSideAloneNameIt()
    {
        string list = string.Join(' ', FramingListPages.Of(Plan).SelectMany(Words));
        Assert.Contains(SeaCock, list);
        Assert.Contains(Bearer, list);
        int starboard = 0,
            port = 0;
        foreach (PlankLayerPlan layer in Plan.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard.Concat(layer.Port))
            {
                string[] things =
                [
                    .. Plan
                        .Framing.On(plank.Id)
                        .Where(c => c.Of.Only is not null)
                        .Select(c => FramingWords.Sided(c.Of)),
                ];
                Assert.Equal(
                    things.Length,
                    things.Count(t => t == (plank.Side == Side.Starboard ? SeaCock : Bearer))
                );
                string card = string.Join(' ', FramingWords.OnCard(Plan, plank));
                Assert.All(things, t => Assert.Contains(t, card));
                Assert.DoesNotContain(plank.Side == Side.Starboard ? Bearer : SeaCock, card);
                if (things.Length > 0)
                {
                    (starboard, port) =
                        plank.Side == Side.Starboard
                            ? (starboard + 1, port)
                            : (starboard, port + 1);
                    Assert.Null(
                        DrawnPlanks
                            .Of(OnPlanks.Of(Plan), layer, plank.Side)
                            .Single(d => d.Plank.Id == plank.Id)
                            .Twin
                    );
                }
            }
        }

        Assert.True(
            starboard >= 2 && port >= 6,
            $"{starboard} planks to starboard, {port} to port"
        );
    }

    [Fact]
    public void APatternNamesItWhereItIsLongEnough()
    {
        Plank cocked = Crossed(Side.Starboard),
            borne = Crossed(Side.Port);
        Assert.Contains(SeaCock, Words(Pattern(cocked)));
        Assert.Contains(Bearer, Words(Pattern(borne)));
        Assert.DoesNotContain(Bearer, Words(Pattern(Plan.Find(borne.Id.Twin)!)));
        Assert.DoesNotContain(SeaCock, Words(Pattern(Plan.Find(cocked.Id.Twin)!)));
    }

    /// <summary>The first list has every thing with the place that the job gives it, as it is set out.</summary>
    [Fact]
    public void TheListGivesThePlaceOfEach()
    {
        string first = string.Join(' ', Words(FramingListPages.Of(Plan)[0]));
        Assert.All(
            Plan.Job.Framing,
            f => Assert.Contains(FramingWords.Sided(f), first, StringComparison.Ordinal)
        );
        Assert.Contains("420 mm from the keel", first, StringComparison.Ordinal);
        var cock = (FramingLine.Spot)Plan.Job.Framing.Single(f => f.Name == "sea cock").Line;
        Assert.Contains(
            $"{NumberText.Trimmed(((FramingLine.FromKeel)cock.Along).Mm, 1)} mm from the keel,",
            first,
            StringComparison.Ordinal
        );
        Assert.All(FramingListPages.Of(Plan), p => Assert.Empty(SheetCheck.Faults(p)));
    }

    /// <summary>The plank whose run of the thing is longest.</summary>
    private static Plank Crossed(Side side) =>
        Layer(1)
            .On(side)
            .MaxBy(p =>
                Plan.Framing.On(p.Id)
                    .Where(c => c.Of.Only == side && c.Centre.Length > 1)
                    .Select(c => c.Centre[0].ChordTo(c.Centre[^1]))
                    .DefaultIfEmpty()
                    .Max()
            )!;

    private static Drawing Pattern(Plank plank) =>
        FullSizePattern.Page(OnPlanks.Of(Plan), Plan.LayerOf(plank.Id), plank);

    /// <summary>Dashed, port above and starboard below the middle, each with its name and nothing of it on the other side.</summary>
    private static void AreOnTheirSides(Drawing sheet)
    {
        Assert.Contains(SeaCock, Words(sheet));
        Assert.Contains(Bearer, Words(sheet));
        Polyline[] dashed =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == PlankFit.Draughting.Layout.Layers.Behind && l.Pen.IsDashed),
        ];
        double middle = Middle(sheet);
        Vec2[] port = [.. dashed.SelectMany(l => l.Points).Where(p => p.Y > middle)],
            starboard = [.. dashed.SelectMany(l => l.Points).Where(p => p.Y < middle)];
        Assert.NotEmpty(port);
        Assert.NotEmpty(starboard);
        // The bearer is 1500 mm long, the place 80: whatever the scale, the one is far the longer.
        Assert.True(Long(port) > 10 * Long(starboard), $"{Long(port)}, {Long(starboard)}");
    }

    private static double Long(Vec2[] points) => points.Max(p => p.X) - points.Min(p => p.X);

    /// <summary>Between the sides: midway between the highest and lowest of the planks.</summary>
    private static double Middle(Drawing sheet)
    {
        double[] y =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == PlankFit.Draughting.Layout.Layers.Hull && !l.Pen.IsDashed)
                .SelectMany(l => l.Points)
                .Select(p => p.Y),
        ];
        return (y.Min() + y.Max()) / 2;
    }

    private static string[] Words(Drawing sheet) =>
        [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
}
