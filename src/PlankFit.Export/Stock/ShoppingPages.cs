using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>What the plan of cutting takes, for the yard and the rack: what to buy, which boards to fetch, what is left over, and what finds no place.</summary>
public static class ShoppingPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, NestPlan nest)
    {
        List<SheetPage> pages = [];
        bool buys = Bought.All(nest).Any();
        if (buys)
        {
            pages.AddRange(Buy(plan, nest).Pages(plan.Job));
        }

        pages.AddRange(
            Fetch(plan, nest, buys ? [] : Summary(nest, plan.Job.Units)).Pages(plan.Job)
        );
        if (!nest.Unplaced.IsEmpty)
        {
            pages.AddRange(Missing(plan, nest).Pages(plan.Job));
        }

        if (!Offcuts.Of(nest).IsEmpty)
        {
            pages.AddRange(LeftOver(plan, nest).Pages(plan.Job));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static TitleBlock Block(BottomPlan plan, string of) =>
        new("Boards for the planks", of, SheetWords.Unit(plan.Job.Units), null, Cautions.Boards);

    private static ListSheet Buy(BottomPlan plan, NestPlan nest)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            Block(plan, "what to buy"),
            Summary(nest, plan.Job.Units),
            [
                new("count", 7),
                new("long", 13),
                new("wide", 11),
                new("thick", 11),
                new("species", 18, false),
                new("grade", 10, false),
                new("in the list", 16, false),
                new("price of one", 10),
                new("price", 10),
            ],
            [
                .. Bought
                    .All(nest)
                    .Select(b =>
                        ImmutableArray.Create(
                            NumberText.Trimmed(b.Count, 0),
                            LengthText.ForPaper(b.Size.LengthMm, unit),
                            PlankWords.Small(b.Size.WidthMm, unit),
                            PlankWords.Small(b.Size.ThicknessMm, unit),
                            b.Species ?? "",
                            b.Grade ?? "",
                            b.Named ?? NestTables.NotListed,
                            b.One is { } one ? NestWords.Money(one) : "",
                            b.Price is { } all ? NestWords.Money(all) : ""
                        )
                    ),
            ]
        );
    }

    /// <summary>How good the plan is, and what becomes of the stock.</summary>
    private static ImmutableArray<string> Summary(NestPlan nest, LengthUnit unit)
    {
        var use = StockUse.Of(nest);
        ImmutableArray<string> parts = BoardCutWords.AreasOf(
            use.BoardsMm2,
            [use.PiecesMm2, use.OffcutsMm2, use.WastedMm2],
            unit
        );
        int bought = nest.Boards.Count(b => !b.Stock.OnHand);
        return
        [
            .. NestWords.Missing(nest, unit),
            .. nest.Materials.Select(m => Line(nest, m, unit)),
            $"Of {BoardCutWords.Area(use.BoardsMm2, unit)} cut into, {parts[0]} become planks, {parts[1]} are left over in pieces worth keeping, and {parts[2]} are waste.",
            bought == 0 && nest.Unplaced.IsEmpty ? "Nothing is to be bought: the rack serves."
            : bought == 0 ? "Of what is planned nothing is to be bought."
            : use.Cost is { } cost
                ? $"To buy: {PlanWords.Count(bought, "board")}, {NestWords.Money(cost)} in all."
            : $"To buy: {PlanWords.Count(bought, "board")}; not all have a price in the list.",
        ];
    }

    private static string Line(NestPlan nest, NestedMaterial material, LengthUnit unit) =>
        $"{material.Name}: {NestWords.Takes(material, unit)}{NestWords.Quality(nest, material, unit)}.";

    private static ListSheet Fetch(
        BottomPlan plan,
        NestPlan nest,
        ImmutableArray<string> summary
    ) =>
        new(
            Block(plan, "boards that are cut into"),
            [.. summary, "One line a kind of board; the cut sheets show each board."],
            [
                new("count", 7),
                new("size", 24, false),
                new("species", 18, false),
                new("grade", 10, false),
                new("from", 9, false),
                new("in planks", 9),
                new("boards", 40, false),
            ],
            [
                .. nest
                    .Boards.GroupBy(b =>
                        (
                            Size: NestWords.Size(b.Stock, plan.Job.Units),
                            b.Stock.Species,
                            b.Stock.Grade,
                            b.Stock.OnHand
                        )
                    )
                    .OrderBy(g => g.Key.OnHand ? 0 : 1)
                    .Select(g =>
                        ImmutableArray.Create(
                            NumberText.Trimmed(g.Count(), 0),
                            g.Key.Size,
                            g.Key.Species ?? "",
                            g.Key.Grade ?? "",
                            g.Key.OnHand ? "rack" : "to buy",
                            NumberText.Trimmed(100 * Filled(g), 0) + " %",
                            string.Join(", ", g.Select(b => b.Id))
                        )
                    ),
            ],
            Bold: false
        );

    /// <summary>The part of boards of one size that becomes planks.</summary>
    private static double Filled(IEnumerable<SawnBoard> boards) =>
        boards.Average(PieceInBoard.Filled);

    private static ListSheet Missing(BottomPlan plan, NestPlan nest) =>
        new(
            Block(plan, "pieces without a place"),
            ["These are in no board. Everything else is planned all the same."],
            [new("piece", 12, false), new("what is missing, and what would serve", 88, false)],
            [.. nest.Unplaced.Select(u => ImmutableArray.Create(u.Piece.Id.ToString(), u.Why))]
        );

    private static ListSheet LeftOver(BottomPlan plan, NestPlan nest)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            Block(plan, "what is left over"),
            [
                "Square cut and numbered; mark the number on the wood. Marking planks as sawn (plankfit sawn) takes the boards that they came from off the rack and puts these on it; where that is not done, tables/offcuts.csv lists them as stock.",
            ],
            [
                new("offcut", 14, false),
                new("length", 14),
                new("width", 14),
                new("thickness", 10),
                new("lies from the marked end", 22),
                new("species", 16, false),
                new("grade", 10, false),
            ],
            [
                .. Offcuts
                    .Of(nest)
                    .Select(o =>
                        ImmutableArray.Create(
                            o.Id,
                            LengthText.ForPaper(o.LengthMm, unit),
                            LengthText.ForPaper(o.WidthMm, unit),
                            LengthText.ForPaper(o.Stock.ThicknessMm, unit),
                            $"{LengthText.PaperNumber(o.FromMm, unit)} to {LengthText.PaperNumber(o.ToMm, unit)}",
                            o.Stock.Species ?? "",
                            o.Stock.Grade ?? ""
                        )
                    ),
            ]
        );
    }
}
