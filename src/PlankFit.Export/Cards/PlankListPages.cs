using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

/// <summary>The numbered list of planks for paper: a picture, the sizes, both ends and notes for each, six planks a sheet.</summary>
public static class PlankListPages
{
    private const int PerPage = 6;
    private const double HeadMm = 7;
    private const int EndsColumn = 3;
    private const int NotesColumn = 4;
    private const double TopMm = 1.6;

    /// <summary>What a row's sizes and notes need, mm.</summary>
    private const double LeastRowMm = 24;

    // Plank, picture, sizes, ends, notes.
    private static readonly double[] Columns = [0.08, 0.215, 0.13, 0.395, 0.18];

    public static ImmutableArray<Drawing> Of(PlanShown shown) => Of(DrawnSides.Of(shown));

    public static ImmutableArray<Drawing> Of(DrawnSides drawn)
    {
        BottomPlan plan = drawn.Shown.Plan;
        List<SheetPage> pages = [];
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Side side in Enum.GetValues<Side>())
            {
                TitleBlock block = new(
                    "Plank list",
                    SheetWords.Of(side, layer),
                    "pictures not to scale",
                    null,
                    Cautions.Saw
                );
                pages.AddRange(
                    Paged(drawn.Shown.On(panel), layer, drawn.On(layer, side))
                        .Select(rows => new SheetPage(
                            SheetFormat.Bench(plan.Job),
                            block,
                            (pad, inside) => Table(pad, inside, rows, layer, drawn.Shown.On(panel))
                        ))
                );
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>As many planks to a page as have room, six at the most; one with many ends takes more of it, and what is over goes to all alike.</summary>
    private static IEnumerable<List<(DrawnPlank Drawn, double HeightMm)>> Paged(
        PlanShown shown,
        PlankLayerPlan layer,
        ImmutableArray<DrawnPlank> planks
    )
    {
        BottomPlan plan = shown.Plan;
        Box body = Frame.Inside(SheetFormat.Bench(plan.Job));
        double room = body.Height - HeadMm,
            endsMm = Column(body, EndsColumn).Width,
            notesMm = Column(body, NotesColumn).Width,
            left = room;
        List<(DrawnPlank Drawn, double HeightMm)> page = [];
        foreach (DrawnPlank drawn in planks)
        {
            Plank plank = drawn.Plank;
            double needed = Math.Max(
                PartNotes.InList(shown, plank).Any()
                    ? Math.Max(LeastRowMm, NotesHeightMm(shown, plank, layer, notesMm))
                    : LeastRowMm,
                ListedEnds.HeightMm(plank, endsMm, layer.Spec.ThicknessMm, plan.Job.Units)
            );
            if (page.Count > 0 && (page.Count == PerPage || needed > left))
            {
                yield return Spread(page, left / page.Count);
                page = [];
                left = room;
            }

            page.Add((drawn, needed));
            left -= needed;
        }

        if (page.Count == 0)
        {
            yield break;
        }

        // The last page's rows keep the height of the others.
        double usual = room / PerPage;
        yield return Spread(page, Math.Max(0, Math.Min(left / page.Count, usual - LeastRowMm)));
    }

    private static List<(DrawnPlank Drawn, double HeightMm)> Spread(
        List<(DrawnPlank Drawn, double HeightMm)> page,
        double moreMm
    ) => [.. page.Select(r => (r.Drawn, r.HeightMm + moreMm))];

    private static void Table(
        SheetCanvas pad,
        Box inside,
        List<(DrawnPlank Drawn, double HeightMm)> rows,
        PlankLayerPlan layer,
        PlanShown shown
    )
    {
        LengthUnit unit = shown.Plan.Job.Units;
        PlankId id = rows[0].Drawn.Plank.Id;
        Box head = inside with { Bottom = inside.Top - HeadMm };
        string[] names =
        [
            "plank",
            "seen on the outer face",
            $"sizes, {SheetWords.Unit(unit)}",
            $"ends, {Panel.InnerWordOf(id)} to {Panel.OuterWordOf(id)}",
            "edges, bend, fitting",
        ];
        for (int i = 0; i < names.Length; i++)
        {
            Box cell = Column(head, i);
            pad.Text(
                new(cell.Left, head.Middle.Y),
                names[i],
                Letters.Small,
                Anchor.MiddleLeft,
                true
            );
            if (i > 0)
            {
                pad.Line(cell.Left - 2, inside.Top, cell.Left - 2, inside.Bottom, Pens.Rule);
            }
        }

        double top = head.Bottom;
        for (int i = 0; i < rows.Count; i++)
        {
            Box row = inside with { Top = top, Bottom = top - rows[i].HeightMm };
            pad.Line(row.Left, row.Top, row.Right, row.Top, i == 0 ? Pens.Frame : Pens.Rule);
            Row(pad, row, rows[i].Drawn, layer, shown);
            top = row.Bottom;
        }
    }

    private static Box Column(Box row, int index)
    {
        double left = row.Left + (Columns.Take(index).Sum() * row.Width);
        return row with { Left = left + 2, Right = left + (Columns[index] * row.Width) - 2 };
    }

    private static void Row(
        SheetCanvas pad,
        Box row,
        DrawnPlank drawn,
        PlankLayerPlan layer,
        PlanShown shown
    )
    {
        Plank plank = drawn.Plank;
        LengthUnit unit = shown.Plan.Job.Units;
        Box name = Column(row, 0);
        pad.Text(name.Left, row.Top - 6.5, plank.Id.ToString(), Letters.Heading, bold: true);
        if (drawn.Twin is { } twin)
        {
            pad.Text(name.Left, row.Top - 11.5, twin.ToString(), Letters.Heading, bold: true);
        }

        pad.Paragraph(
            name.Left,
            row.Top - (drawn.Twin is null ? 9 : 14),
            name.Width,
            PlankWords.Of(plank.Kind),
            Letters.Small
        );
        Box cell = Column(row, 1);
        Picture(pad, drawn.Twin is null ? cell : cell.Row(0, 2), plank, mirrored: false);
        if (drawn.Twin is not null)
        {
            Picture(pad, cell.Row(1, 2), plank, mirrored: true);
        }

        Sizes(pad, Column(row, 2), plank, unit);
        ListedEnds.Draw(pad, Column(row, EndsColumn), plank, layer.Spec.ThicknessMm, unit);
        Box notes = Column(row, NotesColumn);
        double y = row.Top - TopMm;
        foreach (string note in Notes(shown, plank, layer))
        {
            y = pad.Paragraph(notes.Left, y, notes.Width, note, Letters.Small);
        }
    }

    private static IEnumerable<string> Notes(PlanShown shown, Plank plank, PlankLayerPlan layer) =>
        PlankNotes
            .Short(plank, layer.Spec.ThicknessMm, shown.Plan.Job.Units)
            .Concat(PartNotes.InList(shown, plank));

    private static double NotesHeightMm(
        PlanShown shown,
        Plank plank,
        PlankLayerPlan layer,
        double widthMm
    ) =>
        TopMm
        + (
            Notes(shown, plank, layer).Sum(n => Letters.Wrap(n, Letters.Small, widthMm).Count)
            * Letters.Small
            * Letters.Leading
        )
        + 1;

    private static void Picture(SheetCanvas pad, Box cell, Plank plank, bool mirrored)
    {
        Box cut = Box.Around(plank.FlatCut),
            room =
                cell with
                {
                    Right = cell.Right - 7,
                    Top = cell.Top - 2,
                    Bottom = cell.Bottom + 2,
                };
        double factor = Math.Min(room.Width / cut.Width, Math.Min(room.Height, 9) / cut.Height);
        var at = Placing.Centred(cut, room, factor, mirrored ? -factor : factor);
        BuiltShape.Draw(pad, plank, at, cell.Within(-5), 1);
        ForwardArrow.Draw(
            pad,
            new(cell.Right - 3, cell.Middle.Y),
            BuiltShape.Paper(ForwardArrow.OnFlat(plank), at),
            5
        );
    }

    private static void Sizes(SheetCanvas pad, Box cell, Plank plank, LengthUnit unit)
    {
        ImmutableArray<WidthAt> widths = WidthAt.Of(plank);
        string[] across = [.. widths.Select(w => LengthText.PaperNumber(w.WidthMm, unit))];
        double y = cell.Top - 1.8;
        Item("saw", LengthText.PaperNumber(plank.CutLengthMm, unit, RoundTo.Up));
        Item("net", LengthText.PaperNumber(plank.NetLengthMm, unit, RoundTo.Up));
        if (across.Distinct().Count() == 1)
        {
            Item("wide", across[0]);
        }
        else
        {
            // "in" beside a figure is read as inches.
            string[] places =
                across.Length == 3
                    ? ["wide, inboard", "middle", "outboard"]
                    : ["wide, inboard", "outboard"];
            foreach ((string place, string figure) in places.Zip(across))
            {
                Item(place, figure);
            }
        }

        void Item(string name, string figure)
        {
            pad.Text(cell.Left, y - Letters.Bench, name, Letters.Small);
            double at = Math.Max(7.5, Letters.Width(name, Letters.Small) + 1.2),
                size = at + Letters.Width(figure, Letters.Bench, true) <= cell.Width
                    ? Letters.Bench
                    : Letters.Small;
            pad.Text(cell.Left + at, y - Letters.Bench, figure, size, bold: true);
            y -= Letters.Bench * 1.6;
        }
    }
}
