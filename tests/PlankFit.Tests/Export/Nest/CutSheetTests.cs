using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Geometry;
using PlankFit.Planking;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets as they are read at the saw: nothing on anything else, every number and name there, figures as worked by hand.</summary>
public sealed class CutSheetTests
{
    public static TheoryData<string> Plans => ["rack", "yard", "ply", "by hand"];

    private static BottomPlan Plan(string which) =>
        which switch
        {
            "rack" => NestedPlans.Launch,
            "yard" => NestedPlans.Skiff,
            "ply" => NestedPlans.Ply,
            _ => PrismaticPlan.Build(new()) with { Nest = HandMadePlan.Plan },
        };

    [Theory]
    [MemberData(nameof(Plans))]
    public void Nothing_stands_on_anything_else(string which)
    {
        BottomPlan plan = Plan(which);
        None(
            Sheets(plan)
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );
    }

    /// <summary>On the drawing of a board every cut has its number in a ring and in the table, every piece its name in the strip and in the table.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_cut_and_every_piece_is_named(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in Cuts(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            string[] words = [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
            foreach (SawCut cut in cuts.Cuts)
            {
                Assert.True(words.Count(w => w == NumberText.Trimmed(cut.Number, 0)) >= 2);
            }

            Assert.Equal(cuts.Cuts.Length, Rings(sheet).Count());
            Strip[] strips = [.. Strips(sheet, cuts).Where(s => !s.View.IsOverview)];
            foreach (LaidPiece piece in cuts.Board.Pieces)
            {
                string id = piece.Piece.Id;
                Assert.Single(strips.SelectMany(s => s.Words), w => w.Text == id);
                Assert.True(words.Count(w => w == id) >= 2, id);
            }

            Assert.Equal(
                cuts.Board.Pieces.Count(p => p.FaceDown),
                strips.SelectMany(s => s.Words).Count(w => w.Text == "outer face away")
            );
        }
    }

    /// <summary>A name is on its own piece, or on none.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void No_name_stands_on_another_piece(string which)
    {
        BottomPlan plan = Plan(which);
        int named = 0;
        foreach (BoardCutList cuts in Cuts(plan))
        {
            foreach (Strip strip in Strips(CutSheets.Board(plan, cuts.Board), cuts))
            {
                foreach (Lettering name in strip.Words.Where(w => strip.Wood.ContainsKey(w.Text)))
                {
                    named++;
                    var letters = BoardLaws.Shape(SheetCheck.Corners(name));
                    Assert.DoesNotContain(
                        strip.Wood,
                        w =>
                            w.Key != name.Text
                            && BoardLaws.Shape(w.Value.Points).Intersects(letters)
                    );
                }
            }
        }

        Assert.True(named >= plan.Nest!.Boards.Sum(b => b.Pieces.Length));
    }

    /// <summary>A number stands on its own cut, or a thin line leads from it to there.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_number_leads_to_its_cut(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in Cuts(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            var told = new List<int>();
            foreach (Strip strip in Strips(sheet, cuts))
            {
                foreach (SawCut cut in strip.View.Cuts)
                {
                    told.Add(cut.Number);
                    string number = NumberText.Trimmed(cut.Number, 0);
                    CircleShape ring = Rings(sheet)
                        .Single(r =>
                            strip.Words.Any(l => l.Text == number && l.At.ChordTo(r.Centre) < 1e-9)
                        );
                    Vec2[] reaches =
                    [
                        ring.Centre,
                        .. sheet
                            .Shapes.OfType<Polyline>()
                            .Where(l =>
                                l.Points.Length == 2
                                && Math.Abs(l.Points[0].ChordTo(ring.Centre) - ring.RadiusMm) < 1e-9
                            )
                            .Select(l => l.Points[1]),
                    ];
                    Assert.True(
                        reaches.Any(p => Off(cut, strip.OnBoard(p)) * strip.Factor < 0.2),
                        $"{cuts.Board.Id}, {number}"
                    );
                }
            }

            Assert.Equal(cuts.Cuts.Select(c => c.Number), told.Order());
        }
    }

    /// <summary>Sheets of many lanes are shown whole, with their rips, and then a few lanes at a time: each lane once, so wide that its names can be read.</summary>
    [Fact]
    public void Lanes_of_a_sheet_are_shown_large()
    {
        const double LeastLaneMm = 9;
        BottomPlan plan = Plan("ply");
        BoardCutList[] many = [.. Cuts(plan).Where(c => c.Lanes.Length > 4)];
        Assert.Contains(many, c => c.Frame.Stock.GrainAcross);
        Assert.Contains(many, c => !c.Frame.Stock.GrainAcross);
        foreach (BoardCutList cuts in many)
        {
            Strip[] strips = [.. Strips(CutSheets.Board(plan, cuts.Board), cuts)];
            Assert.True(strips[0].View.IsWhole && strips[0].View.IsOverview);
            Assert.All(strips[0].View.Cuts, c => Assert.Equal(CutKind.Rip, c.Kind));
            Assert.Equal(cuts.Lanes, strips.Skip(1).SelectMany(s => s.View.Lanes));
            foreach (Strip strip in strips.Skip(1))
            {
                Assert.Equal(
                    strip.View.Lanes.SelectMany(l => l.PieceIds).Order(StringComparer.Ordinal),
                    strip.View.Places.Select(p => p.PieceId).Order(StringComparer.Ordinal)
                );
                Assert.InRange(strip.Box.Height / strip.View.Lanes.Count(), LeastLaneMm, 25);
                Assert.All(
                    strip.Wood,
                    w => Assert.All(w.Value.Points, p => Assert.True(strip.Box.Holds(p)))
                );
            }
        }
    }

    /// <summary>Two parallelograms at 45 degrees with a kerf of 3: 1000 and 1150, and the second 1000 and 3 times the root of 2 further on.</summary>
    [Fact]
    public void Figures_are_those_worked_by_hand()
    {
        double pitch = 1000 + (3 * Math.Sqrt(2));
        StockBoard board = SawPieces.Board("B-01", 2400, 150);
        ImmutableArray<LaidPiece> pieces =
        [
            new(SawPieces.Parallelogram("S1-01", 1000, 150, 45), false, false, 0, new(0, 0)),
            new(SawPieces.Parallelogram("S1-02", 1000, 150, 45), false, false, 0, new(pitch, 0)),
        ];
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards = [new("B-01", board, [], pieces)],
        };
        Assert.Equal(
            [
                "1|across|S1-01 | S1-02|1000|1150|45° to the right",
                "2|across|end of S1-02|2004|2154|45° to the right",
                "3|across|begin S1-01|0|150|45° to the right",
            ],
            Rows(nest, LengthUnit.Millimetre)
        );
        // The list of cuts has the same as numbers: along and up at both ends, degrees from square.
        Table list = NestTables.Cuts(PrismaticPlan.Build(new()) with { Nest = nest }, nest);
        Assert.Equal(
            [
                [1000, 0, 1150, 150, 45],
                [Math.Round(pitch + 1000, 6), 0, Math.Round(pitch + 1150, 6), 150, 45],
                [0, 0, 150, 150, 45],
            ],
            list.Rows.Select(r =>
                r.Skip(8).Take(5).Select(c => Math.Round(c.Number!.Value, 6)).ToArray()
            )
        );
        // To 1/32 in: 1000 mm are 39 3/8 in; 1150 are 45 9/32; 2004.24 are 78 29/32; 2154.24 are 84 13/16; 150 are 5 29/32.
        Assert.Equal(
            [
                "1|across|S1-01 | S1-02|3-3-3|3-9-2 1/4|45° to the right",
                "2|across|end of S1-02|6-6-7 1/4|7-0-6+|45° to the right",
                "3|across|begin S1-01|0-0-0|0-5-7 1/4|45° to the right",
            ],
            Rows(nest, LengthUnit.FeetInchesEighths)
        );
    }

    /// <summary>
    /// Two lanes of 150 and a kerf of 3 in a board of 320: rips at 150 and at 303, both lanes below their kerf. In the second lane a rectangle whose corner is taken
    /// off by 40: that corner is 40 up from the edge that the lane has when it lies on the bench, though 193 from the board's.
    /// </summary>
    [Fact]
    public void A_free_lane_is_measured_from_its_own_edge()
    {
        StockBoard board = SawPieces.Board("B-01", 2400, 320);
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards =
            [
                new(
                    "B-01",
                    board,
                    [new(0, 150, ["S1-01"]), new(153, 303, ["S1-02"])],
                    [
                        new(SawPieces.Rectangle("S1-01", 2400, 150), false, false, 0, new(0, 0)),
                        new(
                            SawPieces.Of(
                                "S1-02",
                                new(40, 0),
                                new(2000, 0),
                                new(2000, 150),
                                new(0, 150),
                                new(0, 40)
                            ),
                            false,
                            false,
                            0,
                            new(0, 153)
                        ),
                    ]
                ),
            ],
        };
        Assert.Equal(
            [
                "1|rip, whole length|kerf above|150 up",
                "2|rip, whole length|kerf above|303 up",
                "3|across|end of S1-02|2000|2000|square",
                "4|across|begin S1-02|40|0, 40 up|45° to the left",
            ],
            Rows(nest, LengthUnit.Millimetre, 4)
        );
        Table list = NestTables.Cuts(PrismaticPlan.Build(new()) with { Nest = nest }, nest);
        Assert.Equal(
            [
                [40d, 0, 0, 40, -45],
            ],
            list.Rows.Where(r => r[1].Number == 4)
                .Select(r => r.Skip(8).Take(5).Select(c => Math.Round(c.Number!.Value, 6)))
        );
    }

    /// <summary>Every strip says its scale, to a tenth.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_strip_is_drawn_to_the_scale_that_it_names(string which)
    {
        BottomPlan plan = Plan(which);
        foreach (BoardCutList cuts in Cuts(plan))
        {
            Drawing sheet = CutSheets.Board(plan, cuts.Board);
            double[] told =
            [
                .. Regex
                    .Matches(Words(sheet), @"drawn 1:(\d+(\.\d)?)")
                    .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)),
            ];
            double[] drawn = [.. Strips(sheet, cuts).Select(s => 1 / s.Factor)];
            Assert.Equal(drawn.Length, told.Length);
            Assert.All(drawn.Zip(told), p => Assert.Equal(p.First, p.Second, 0.06));
        }
    }

    /// <summary>In a sheet whose grain runs across nothing is measured from the marked end along it, and the sheet says so.</summary>
    [Fact]
    public void A_turned_sheet_says_from_where_it_is_measured()
    {
        BottomPlan plan = Plan("by hand");
        string words = Words(
            CutSheets.Board(plan, plan.Nest!.Boards.Single(b => b.Stock.GrainAcross))
        );
        Assert.Contains(
            "lengths are from the edge that is not marked",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("marked edge at the right", words, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_sheet_has_the_caution(string which)
    {
        foreach (Drawing sheet in Sheets(Plan(which)))
        {
            foreach (
                string asked in new[]
                {
                    "both sides of every cut",
                    "eyes, ears",
                    "dust",
                    "saw maker's instructions",
                }
            )
            {
                Assert.Contains(asked, Words(sheet), StringComparison.Ordinal);
            }
        }
    }

    private static IEnumerable<BoardCutList> Cuts(BottomPlan plan) =>
        plan.Nest!.Boards.Select(b => BoardCuts.Of(b, plan.Nest.Spec));

    private static IEnumerable<Drawing> Sheets(BottomPlan plan) =>
        CutSheets
            .Of(plan, plan.Nest!)
            .Concat(plan.Nest!.Boards.Select(b => CutSheets.Board(plan, b)));

    private static string Words(Drawing sheet) =>
        string.Join(' ', sheet.Shapes.OfType<Lettering>().Select(l => l.Text));

    private static IEnumerable<string> Rows(NestPlan nest, LengthUnit unit, int count = 3)
    {
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        plan = plan with { Job = plan.Job with { Units = unit } };
        Lettering[] words = [.. CutSheets.Board(plan, nest.Boards[0]).Shapes.OfType<Lettering>()];
        Lettering head = words.Single(w => w.Text == "makes"),
            last = words.Single(w => w.Text == "leans");
        return words
            .Where(w => w.At.Y < head.At.Y && w.LeftEnd().X < last.At.X && w.Text.Length > 0)
            .GroupBy(w => Math.Round(w.At.Y, 3))
            .OrderByDescending(g => g.Key)
            .Take(count)
            .Select(g => string.Join('|', g.OrderBy(w => w.LeftEnd().X).Select(w => w.Text)));
    }

    /// <summary>One strip of a board's drawing, told from the others by where it lies: its ground, the pieces upon it, and the letters in it or in what is left above it.</summary>
    private sealed record Strip(
        StripView View,
        Box Box,
        IReadOnlyDictionary<string, Polyline> Wood,
        Lettering[] Words
    )
    {
        public double Factor => Box.Width / View.List.Frame.LengthMm;

        public Vec2 OnBoard(Vec2 paper) =>
            new((paper.X - Box.Left) / Factor, ((paper.Y - Box.Bottom) / Factor) + View.LowMm);
    }

    private static IEnumerable<Strip> Strips(Drawing sheet, BoardCutList cuts)
    {
        const double AboveMm = 7;
        Polyline[] grounds =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer == Layers.Hull && p.Closed && p.Fill is not null),
        ];
        Polyline[] wood =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer == Layers.Cut && p.Closed && p.Fill is not null),
        ];
        ImmutableArray<StripView> views = StripView.Of(cuts);
        Assert.Equal(views.Length, grounds.Length);
        int drawn = 0;
        foreach ((StripView view, Polyline ground) in views.Zip(grounds))
        {
            var box = new Box(
                ground.Points.Min(p => p.X) - 0.01,
                ground.Points.Min(p => p.Y) - 0.01,
                ground.Points.Max(p => p.X) + 0.01,
                ground.Points.Max(p => p.Y) + 0.01
            );
            Box above = box with { Top = box.Top + AboveMm };
            string[] ids = [.. view.Pieces.Select(p => p.Piece.Id)];
            yield return new(
                view,
                box,
                ids.Zip(wood.Skip(drawn)).ToDictionary(p => p.First, p => p.Second),
                [.. sheet.Shapes.OfType<Lettering>().Where(l => above.Holds(l.At))]
            );
            drawn += ids.Length;
        }

        Assert.Equal(drawn, wood.Length);
    }

    private static IEnumerable<CircleShape> Rings(Drawing sheet) =>
        sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill == 1);

    /// <summary>From a place on the board to a cut, mm.</summary>
    private static double Off(SawCut cut, Vec2 at)
    {
        IReadOnlyList<Vec2> line = cut.ToTheLine ? cut.Line : [cut.From, cut.To];
        return Enumerable
            .Range(1, line.Count - 1)
            .Min(i =>
            {
                Vec2 side = line[i] - line[i - 1];
                double t = Math.Clamp((at - line[i - 1]).Dot(side) / side.Dot(side), 0, 1);
                return at.ChordTo(line[i - 1] + (t * side));
            });
    }

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
