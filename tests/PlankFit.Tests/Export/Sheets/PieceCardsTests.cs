using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>A plank in pieces is sawn piece by piece: each has a card with its own length, and its joints are its ends.</summary>
public sealed class PieceCardsTests
{
    [Theory]
    [MemberData(nameof(Plans))]
    public void EveryPieceHasACardOfItsOwn(string name)
    {
        BottomPlan plan = Plan(name);
        int pieces = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var cards = PlankCardPages
                .Singles(OnPlanks.Of(plan), layer, Side.Starboard)
                .ToDictionary(c => c.Id.ToString(), c => c.Card);
            foreach (
                Plank plank in layer.Starboard.Where(p => plan.Joints.On(p.Id) is not null).Take(6)
            )
            {
                JointedPlank pieced = plan.Joints.On(plank.Id)!;
                Assert.All(pieced.Pieces, p => Assert.True(cards.ContainsKey(p.Id.ToString())));
                string words = Words(cards[plank.Id.ToString()]);
                Assert.Contains($"in {pieced.Pieces.Length} pieces", words);
                // Nothing of its head is cut off.
                Assert.DoesNotContain("...", words, StringComparison.Ordinal);
                foreach (PlankJoint joint in pieced.Joints)
                {
                    // On the whole plank's card a joint is drawn where it lies, on a piece's it is named as its end.
                    Assert.Contains(
                        cards[plank.Id.ToString()].Shapes.OfType<Polyline>(),
                        l => l.Layer == Layers.Joints
                    );
                    string named =
                        $"{(joint.Kind == JointKind.Butt ? "butt" : "scarf")} {joint.Id.Pair}";
                    Assert.Contains(named, Words(cards[$"{plank.Id}{joint.Id.Inboard}"]));
                    Assert.Contains(named, Words(cards[$"{plank.Id}{joint.Id.Outboard}"]));
                    if (joint.Kind == JointKind.Scarf)
                    {
                        // The piece that ends on the outer face is tapered on its inner one, over 8 thicknesses; the other on its outer.
                        string inboard = Words(cards[$"{plank.Id}{joint.Id.Inboard}"]),
                            outboard = Words(cards[$"{plank.Id}{joint.Id.Outboard}"]);
                        bool onOuter = joint.Scarf!.InboardOnOuter;
                        string taper =
                            $"taper {LengthText.PaperNumber(joint.LengthMm, plan.Job.Units)} long";
                        Assert.Contains(taper, inboard);
                        Assert.Contains(taper, outboard);
                        Assert.Contains(
                            $"on its {(onOuter ? "inner" : "outer")} face, to",
                            inboard
                        );
                        Assert.Contains(
                            $"on its {(onOuter ? "outer" : "inner")} face, to",
                            outboard
                        );
                    }
                }

                foreach (PlankPiece piece in pieced.Pieces)
                {
                    Drawing card = cards[piece.Id.ToString()];
                    Assert.Contains(
                        $"to saw {LengthText.ForPaper(piece.LengthMm, plan.Job.Units, RoundTo.Up)}",
                        Words(card)
                    );
                    string[] faults =
                    [
                        .. SheetCheck.Faults(card),
                        .. SheetCheck.Struck(card, _ => true),
                        .. BlockCheck.Intruders(card),
                    ];
                    Assert.Equal("", string.Join("\n", faults.Take(9)));
                    pieces++;
                }
            }
        }

        Assert.True(pieces > 5, $"{pieces} pieces");
    }

    public static TheoryData<string> Plans => ["butts", "scarfs"];

    private static BottomPlan Plan(string name) =>
        name == "butts" ? JointedPlans.Butts : JointedPlans.Scarfs;

    private static string Words(Drawing card) =>
        string.Join(' ', card.Shapes.OfType<Lettering>().Select(l => l.Text));
}
