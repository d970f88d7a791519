using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>Cards to cut out and take to the mixing table, four a page: what goes into the cup, to which marks, onto which planks and by when.</summary>
internal static class BatchCards
{
    private const int Across = 2;
    private const int Down = 2;
    private const double CupMm = 22;

    /// <summary>Below it a mark is no measure, half an inch, of which half of 1/32" is 3 in a hundred and half of 0.5 mm is 2: a proposal, no source.</summary>
    private const double LeastMarkMm = LengthUnits.MmPerInch / 2;

    public static IReadOnlyList<SheetPage> Pages(BottomPlan plan, GluePlan glue)
    {
        (GlueStage Stage, GlueBatch Batch)[] all =
        [
            .. glue.Stages.SelectMany(s => s.Batches.Select(b => (s, b))),
        ];
        var block = new TitleBlock(
            "Batch cards",
            "to cut out, in the order of mixing",
            "figures",
            null,
            Cautions.Glue
        )
        {
            Arrow = "",
        };
        return
        [
            .. all.Chunk(Across * Down)
                .Select(page => new SheetPage(
                    SheetFormat.Bench(plan.Job),
                    block,
                    (pad, inside) => Page(pad, inside.Within(2), plan.Job, glue.Spec, page)
                )),
        ];
    }

    private static void Page(
        SheetCanvas pad,
        Box box,
        Job job,
        GlueSpec spec,
        (GlueStage Stage, GlueBatch Batch)[] cards
    )
    {
        for (int i = 0; i < cards.Length; i++)
        {
            Box row = box.Row(i / Across, Down);
            double width = row.Width / Across;
            Box card = row with
            {
                Left = row.Left + (i % Across * width),
                Right = row.Left + (((i % Across) + 1) * width),
            };
            pad.Rectangle(card, Pens.Measure);
            Card(pad, card.Within(2.5), job.Units, spec, cards[i]);
        }
    }

    private static void Card(
        SheetCanvas pad,
        Box box,
        LengthUnit unit,
        GlueSpec spec,
        (GlueStage Stage, GlueBatch Batch) of
    )
    {
        (GlueStage stage, GlueBatch batch) = of;
        pad.Text(
            box.Left,
            box.Top - Letters.Name,
            $"{batch.Name}   {GlueWords.When(batch.MixAt)}",
            Letters.Name,
            bold: true
        );
        pad.Text(
            box.Right,
            box.Top - Letters.Name,
            $"at {GlueWords.Temperature(batch.Celsius, unit)}",
            Letters.Heading,
            Anchor.BaselineRight
        );
        double top = box.Top - Letters.Name - 3,
            caution =
                Letters.Wrap(GlueWords.Caution, Letters.Small, box.Width).Count
                * Letters.Small
                * Letters.Leading;
        string[] lines = [.. Lines(stage, batch, spec, unit)];
        Box? cup =
            spec.Cup is { } drawn && Marked(drawn, batch)
                ? new(box.Right - CupMm, top - CupMm - 4, box.Right, top)
                : null;
        double size = Sizes.FirstOrDefault(
            s => Told(null, lines, (box, top, cup), s) > box.Bottom + caution + 1,
            Letters.Small
        );
        Told(pad, lines, (box, top, cup), size);
        if (cup is { } place)
        {
            CupMarks(pad, place, spec.Cup!, batch);
        }

        pad.Paragraph(box.Left, box.Bottom + caution, box.Width, GlueWords.Caution, Letters.Small);
    }

    /// <summary>The first with which a card's words stand above its caution.</summary>
    private static readonly double[] Sizes = [Letters.Bench, 2.3, 2.15, 2, 1.9];

    /// <summary>Beside the cup lines are shorter, below it they are whole. Where there is no canvas it is measured alone.</summary>
    /// <returns>How far down they come.</returns>
    private static double Told(
        SheetCanvas? pad,
        string[] lines,
        (Box Card, double Top, Box? Cup) room,
        double size
    )
    {
        double top = room.Top;
        foreach (string line in lines)
        {
            double width =
                room.Cup is { } cup && top > cup.Bottom
                    ? cup.Left - 2 - room.Card.Left
                    : room.Card.Width;
            pad?.Paragraph(room.Card.Left, top, width, line, size);
            top -= (Letters.Wrap(line, size, width).Count * size * Letters.Leading) + 0.5;
        }

        return top;
    }

    private static IEnumerable<string> Lines(
        GlueStage stage,
        GlueBatch batch,
        GlueSpec spec,
        LengthUnit unit
    )
    {
        MixParts parts = batch.Parts;
        yield return $"{stage.Layer}, {PlankWords.Of(batch.Side)}: "
            + (
                batch.Planks.IsEmpty
                    ? $"{GlueWords.Covers(batch, stage.Use, unit)}, part {batch.Course} of {stage.Batches.Count(b => b.Side == batch.Side)}"
                    : $"{PlanWords.Count(batch.Planks.Length, "plank")}, in this order: {GlueWords.InOrder(batch)}{(batch.Clamps > 0 ? $"; {NumberText.Trimmed(batch.Clamps, 0)} {spec.Crew!.ClampsCalled}" : "")}"
            )
            + ".";
        yield return $"{stage.Mix.Name}, {AmountText.Grams(batch.Grams, unit)}: resin {AmountText.Grams(1000 * parts.ResinKg, unit)} = {AmountText.Millilitres(parts.ResinLitres, unit)}, then hardener {AmountText.Grams(1000 * parts.HardenerKg, unit)} = {AmountText.Millilitres(parts.HardenerLitres, unit)}.";
        if (spec.Cup is { } cup)
        {
            yield return !Marked(cup, batch)
                ? "Too little to be measured by marks: weigh it."
                : $"Mark 1 at {LengthText.ForPaper(cup.HeightMm(parts.ResinLitres), Fine(unit))}, mark 2 at {LengthText.ForPaper(cup.HeightMm(parts.Litres), Fine(unit))} above the cup's bottom, by volume; on a scale by the grams: the two ratios differ.";
        }

        yield return $"Stir, scrape, pour into a second clean pot, stir again: {NumberText.Trimmed(spec.Crew!.MixMinutes, 0)} minutes. {(stage.Use == GlueUse.Weave ? "Pour it out in lines over the cloth at once, roll it thin." : stage.Use == GlueUse.WettingOut ? OnCloth(stage, batch, unit) : $"Filler in only after that{Filler(stage, batch, spec, unit)}; into a shallow tray.")}";
        yield return $"Out of the pot by {GlueWords.Hour(batch.Clocks.OutBy)} (planned {GlueWords.Hour(batch.Clocks.OutAt)}). Down by {GlueWords.Hour(batch.Clocks.DownBy)} (planned {GlueWords.Hour(batch.Clocks.DownAt)}).";
        yield return $"{GlueWords.Warmer(unit)}: out by {GlueWords.Hour(batch.Clocks.Warmer.OutBy)}, down by {GlueWords.Hour(batch.Clocks.Warmer.DownBy)}. Mixed later and no warmer: later by as much; in a warmer hour: plan it again. Warm pot: leave it, outdoors.";
    }

    /// <summary>The wood's part goes on before the cloth: poured out over it with the rest it would be too much for the cloth.</summary>
    private static string OnCloth(GlueStage stage, GlueBatch batch, LengthUnit unit) =>
        stage.ForWood > 0
            ? $"Prime the wood under this part with {AmountText.Grams(stage.ForWood * batch.Grams, unit)} of it; pour the rest out over the cloth at once."
            : "Pour it out over the cloth at once.";

    private static string Filler(GlueStage stage, GlueBatch batch, GlueSpec spec, LengthUnit unit)
    {
        string[] fillers =
        [
            .. spec.FillersOf(stage.Use).Select(f => GlueWords.Filler(f, batch.Grams, unit)),
        ];
        return fillers.Length == 0 ? "" : $": {string.Join(" and ", fillers)}";
    }

    /// <summary>Whether both parts stand high enough in the cup to be read: the resin, and the hardener above it, which is the smaller and matters more.</summary>
    internal static bool Marked(Cup cup, GlueBatch batch)
    {
        double resin = cup.HeightMm(batch.Parts.ResinLitres),
            hardener = cup.HeightMm(batch.Parts.Litres) - resin;
        return resin >= LeastMarkMm && hardener >= LeastMarkMm;
    }

    private static LengthUnit Fine(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit;

    /// <summary>The cup to scale, with both marks.</summary>
    private static void CupMarks(SheetCanvas pad, Box box, Cup cup, GlueBatch batch)
    {
        double second = cup.HeightMm(batch.Parts.Litres),
            first = cup.HeightMm(batch.Parts.ResinLitres),
            high = double.IsFinite(cup.RimMm) ? cup.RimMm : second * 1.15;
        double RadiusAt(double h) => cup.BottomRadiusMm + (cup.Slope * h);
        double scale = Math.Min(
            (box.Height - 4) / high,
            (box.Width - 12) / 2 / Math.Max(RadiusAt(0), RadiusAt(high))
        );
        double middle = box.Left + (scale * Math.Max(RadiusAt(0), RadiusAt(high))) + 4,
            foot = box.Bottom + 2;
        Vec2 At(double side, double h) =>
            new(middle + (side * scale * RadiusAt(h)), foot + (scale * h));
        pad.Open([At(-1, high), At(-1, 0), At(1, 0), At(1, high)], Pens.Outer);
        // One to either side: where there is little hardener they stand close to each other.
        foreach (
            (double h, string name, double side) in new[] { (first, "1", -1.0), (second, "2", 1.0) }
        )
        {
            pad.Line(At(-1, h).X, At(-1, h).Y, At(1, h).X, At(1, h).Y, Pens.Cut);
            pad.Text(
                At(side, h) + new Vec2(1.2 * side, -Letters.Bench / 2),
                name,
                Letters.Bench,
                side < 0 ? Anchor.BaselineRight : Anchor.BaselineLeft,
                true
            );
        }
    }
}
