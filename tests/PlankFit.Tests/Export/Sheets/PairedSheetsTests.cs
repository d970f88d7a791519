using System.Collections.Immutable;
using PlankFit.Export.Cards;
using PlankFit.Export.Patterns;
using PlankFit.Export.Shown;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Where port is starboard mirrored a card and a row serve both, and name both; nothing that differs is ever drawn once for two.</summary>
public sealed class PairedSheetsTests
{
    private static readonly BottomPlan Alike = DemoPlans.Of("pilot-skiff");

    [Fact]
    public void APairHasOneCardAndOneRowThatNameBoth()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        ImmutableArray<Drawing> cards = PlankCardPages.Of(OnPlanks.Of(Alike)),
            list = PlankListPages.Of(OnPlanks.Of(Alike)),
            all = PlankCardPages.Of(OnPlanks.Of(Asked(Alike)));
        Assert.InRange(cards.Length, 1, (all.Length / 2) + 2);
        Assert.All(
            Alike.PlankLayers.SelectMany(l => l.Port),
            p =>
            {
                Assert.Contains($"and {p.Id}", Words(cards));
                Assert.Contains(p.Id.ToString(), Words(list));
                Assert.DoesNotContain($"and {p.Id}", Words(all));
                Assert.Contains($"{p.Id}", Words(all));
            }
        );
        Assert.Equal(
            "",
            string.Join(
                "\n",
                cards
                    .Concat(list)
                    .SelectMany(d =>
                        SheetCheck
                            .Faults(d)
                            .Concat(SheetCheck.Struck(d, _ => true))
                            .Concat(BlockCheck.Intruders(d))
                    )
                    .Take(9)
            )
        );
    }

    [Fact]
    public void APatternOfAPairServesBothAndIsLegible()
    {
        PlanShown shown = OnPlanks.Of(Alike);
        PlankLayerPlan layer = Alike.PlankLayers.First();
        Assert.Empty(FullSizePattern.Of(shown, layer, Side.Port));
        Assert.False(DrawnSides.Of(shown).IsAny(layer, Side.Port));
        ImmutableArray<Drawing> pages = FullSizePattern.Of(shown, layer, Side.Starboard);
        Assert.All(
            pages.Zip(layer.Port),
            p =>
            {
                Assert.Contains($"{p.Second.Id}: turn the sheet over", Words([p.First]));
                Assert.Contains($"{p.Second.Id} turned over", p.First.Title);
            }
        );
        Assert.Equal("", string.Join("\n", pages.SelectMany(d => SheetCheck.Faults(d)).Take(9)));
        Assert.Equal(
            layer.Port.Length,
            FullSizePattern.Of(OnPlanks.Of(Asked(Alike)), layer, Side.Port).Length
        );
    }

    /// <summary>By a tenth of a millimetre in one point of what is sawn, of what it comes down to, or of a tick; or by nothing but that one of them is fitted.</summary>
    [Theory]
    [InlineData("fitted")]
    [InlineData("cut")]
    [InlineData("net")]
    [InlineData("tick")]
    public void APlankUnlikeItsTwinIsDrawnForItself(string inWhat)
    {
        PlankLayerPlan layer = Alike.PlankLayers.First();
        Plank odd = Odd(layer.Port[4], inWhat);
        BottomPlan changed = Alike with
        {
            Planked = Alike.Planked with
            {
                Layers =
                [
                    .. Alike.Planked.Layers.Select(l =>
                        ReferenceEquals(l, layer)
                            ? layer with
                            {
                                Port = layer.Port.SetItem(4, odd),
                            }
                            : l
                    ),
                ],
            },
        };
        PlanShown shown = OnPlanks.Of(changed);
        PlankLayerPlan with = changed.PlankLayers.First();
        DrawnPlank[] starboard = [.. DrawnPlanks.Of(shown, with, Side.Starboard)],
            port = [.. DrawnPlanks.Of(shown, with, Side.Port)];
        Assert.Equal([odd.Id], port.Select(d => d.Plank.Id));
        Assert.Equal([odd.Id.Twin], starboard.Where(d => d.Twin is null).Select(d => d.Plank.Id));
        Assert.Equal(with.Starboard.Length, starboard.Length);
    }

    /// <summary>The sketch beside a card is the port plank as port's own shape has it, and no copy of starboard's.</summary>
    [Fact]
    public void TheSketchOfATwinIsThePortPlanksShape()
    {
        PlankLayerPlan layer = Alike.PlankLayers.First();
        Plank starboard = layer.Starboard[20],
            port = layer.Port.Single(p => p.Id == starboard.Id.Twin);
        Drawing card = PlankCardPages
            .Singles(OnPlanks.Of(Alike), layer, Side.Starboard)
            .Single(c => c.Id.ToString() == starboard.Id.ToString())
            .Card;
        Polyline[] outlines =
        [
            .. card.Shapes.OfType<Polyline>().Where(l => l.Layer == Layers.Cut && l.Closed),
        ];
        Assert.Contains(outlines, o => IsShaped(o, starboard.FlatCut));
        Assert.Contains(outlines, o => IsShaped(o, port.FlatCut));
        Assert.False(IsShaped(outlines.Single(o => IsShaped(o, port.FlatCut)), starboard.FlatCut));
    }

    /// <summary>Whether every corner drawn lies on the shape, brought to its size and place, within a thousandth of its length.</summary>
    private static bool IsShaped(Polyline drawn, ImmutableArray<Vec2> shape)
    {
        Box on = Box.Around(drawn.Points),
            of = Box.Around(shape);
        double factor = of.Width / on.Width;
        return drawn
            .Points.Select(p => of.Middle + (factor * (p - on.Middle)))
            .All(p => shape.Min(q => q.ChordTo(p)) < 0.001 * of.Width);
    }

    private static Plank Odd(Plank plank, string inWhat)
    {
        Vec2 aside = new(0.1, 0);
        PlankForm form = plank.Form;
        return inWhat switch
        {
            "fitted" => plank with { IsFitted = true },
            "cut" => plank with
            {
                Form = form with
                {
                    Shape = form.Shape with
                    {
                        FlatCut = form.Shape.FlatCut.SetItem(0, form.Shape.FlatCut[0] + aside),
                    },
                },
            },
            "net" => plank with
            {
                Form = form with
                {
                    Shape = form.Shape with
                    {
                        FlatNet = form.Shape.FlatNet.SetItem(0, form.Shape.FlatNet[0] + aside),
                    },
                },
            },
            _ => plank with
            {
                Form = form with
                {
                    Marks = form.Marks.SetItem(
                        0,
                        form.Marks[0] with
                        {
                            At = form.Marks[0].At + aside,
                        }
                    ),
                },
            },
        };
    }

    private static BottomPlan Asked(BottomPlan plan) =>
        plan with
        {
            Job = plan.Job with { Output = plan.Job.Output with { BothSides = true } },
        };

    private static string Words(IEnumerable<Drawing> sheets) =>
        string.Join(' ', sheets.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text));
}
