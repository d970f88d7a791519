using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Export.Glue;

/// <summary>Amounts, batches and planks in gluing order, as data.</summary>
public static class GlueTables
{
    public static Table Amounts(GluePlan glue)
    {
        static MixParts Parts(AmountLine a) => a.Mix.Ratio.Parts(a.Kg.Usual);
        return TableOf.Build<AmountLine>(
            "resin",
            [
                new("where", 18, a => a.Where),
                new("for", 22, a => GlueWords.Of(a.Use)),
                new("product", 18, a => a.Mix.Name),
                new("area, m2", 10, a => a.AreaMm2 / 1e6, 3),
                new("mix, least, kg", 10, a => a.Kg.Least, 3),
                new("mix, usual, kg", 10, a => a.Kg.Usual, 3),
                new("mix, most, kg", 10, a => a.Kg.Most, 3),
                new("resin, usual, kg", 10, a => Parts(a).ResinKg, 3),
                new("hardener, usual, kg", 10, a => Parts(a).HardenerKg, 3),
                new("resin, usual, litres", 10, a => Parts(a).ResinLitres, 3),
                new("hardener, usual, litres", 10, a => Parts(a).HardenerLitres, 3),
                new("filler", 18, a => string.Join(", ", a.Fillers.Select(f => f.Of.Name))),
                new("filler, usual, kg", 10, a => a.Fillers.Sum(f => f.Kg.Usual), 3),
                new("waste, percent", 10, a => 100 * a.Mix.Waste, 1),
                new("rate", 60, a => a.Rate),
            ],
            glue.Amounts
        );
    }

    public static Table Batches(GluePlan glue) =>
        TableOf.Build<(GlueStage Stage, GlueBatch Batch)>(
            "batches",
            [
                new("batch", 8, r => r.Batch.Name),
                new("layer", 18, r => r.Stage.Layer),
                new("side", 10, r => PlankWords.Of(r.Batch.Side)),
                new("what", 40, r => GlueWords.What(r.Batch, r.Stage)),
                new("mix at", 14, r => GlueWords.When(r.Batch.MixAt)),
                new("clamps", 8, r => r.Batch.Clamps),
                new("shop, C", 8, r => r.Batch.Celsius, 1),
                new("grams", 8, r => r.Batch.Grams, 1),
                new("resin, g", 8, r => 1000 * r.Batch.Parts.ResinKg, 1),
                new("hardener, g", 8, r => 1000 * r.Batch.Parts.HardenerKg, 1),
                new("resin, ml", 8, r => 1000 * r.Batch.Parts.ResinLitres, 1),
                new("hardener, ml", 8, r => 1000 * r.Batch.Parts.HardenerLitres, 1),
                new("out of the pot at", 14, r => GlueWords.When(r.Batch.Clocks.OutAt)),
                new("out of the pot by", 14, r => GlueWords.When(r.Batch.Clocks.OutBy)),
                new("down at", 14, r => GlueWords.When(r.Batch.Clocks.DownAt)),
                new("down by", 14, r => GlueWords.When(r.Batch.Clocks.DownBy)),
                new("3 C warmer, out by", 14, r => GlueWords.When(r.Batch.Clocks.Warmer.OutBy)),
                new("3 C warmer, down by", 14, r => GlueWords.When(r.Batch.Clocks.Warmer.DownBy)),
            ],
            glue.Stages.SelectMany(s => s.Batches.Select(b => (s, b)))
        );

    public static Table Planks(GluePlan glue) =>
        TableOf.Build<(GlueStage Stage, GlueBatch Batch, PlankTimes Plank)>(
            "gluing order",
            [
                new("plank", 9, r => r.Plank.Id.ToString()),
                new("layer", 18, r => r.Stage.Layer),
                new("batch", 8, r => r.Batch.Name),
                new("grams", 8, r => r.Plank.Grams, 1),
                new("spread at", 14, r => GlueWords.When(r.Plank.SpreadAt)),
                new("goes down at", 14, r => GlueWords.When(r.Plank.SetAt)),
                new("is down at", 14, r => GlueWords.When(r.Plank.DoneAt)),
                new("fastenings", 10, r => r.Plank.Fastenings),
            ],
            glue.Stages.SelectMany(s => s.Batches.SelectMany(b => b.Planks.Select(p => (s, b, p))))
                .OrderBy(r => r.p.SetAt)
                .ThenBy(r => r.p.Id)
        );
}
