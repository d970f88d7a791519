using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Trust;

/// <summary>[trust]: how far what the planks hang on is trusted.</summary>
internal static class TrustBinder
{
    /// <summary>What a table in sixteenths is rounded to.</summary>
    private const double SixteenthMm = LengthUnits.MmPerInch / 16;

    public static TrustSpec? Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        double Mm(LengthKey key) => table.LengthOrDefault(key, units);
        TableReader? stock = table.Table(TrustKeys.Stock);
        TrustSpec usual = TrustSpec.Default;
        var spec = new TrustSpec
        {
            ReadToMm =
                table.Length(TrustKeys.ReadTo, units)
                ?? (LengthUnits.IsMetric(units) ? usual.ReadToMm : SixteenthMm),
            LoftedWithinMm = Mm(TrustKeys.Lofted),
            FramesMadeWithinMm = Mm(TrustKeys.FramesMade),
            KeelMadeWithinMm = Mm(TrustKeys.KeelMade),
            Standing = Standing(table.Table(TrustKeys.Stand), units),
            Bends = Bends(table.Table(TrustKeys.Bends), units),
            StockWidthWithinMm =
                stock?.Length(TrustWithinKeys.Width, units) ?? usual.StockWidthWithinMm,
            StockThicknessWithinMm =
                stock?.Length(TrustWithinKeys.Thickness, units) ?? usual.StockThicknessWithinMm,
            TapeWithinMm = Mm(TrustKeys.Tape),
            StringWithinMm = Mm(TrustKeys.OverString),
            LevelWithinMm = Mm(TrustKeys.Level),
            SawWhenMm = Mm(TrustKeys.SawWhen),
        };
        stock?.Close();
        table.Close();
        return spec;
    }

    private static FrameStanding Standing(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return FrameStanding.Default;
        }

        var standing = new FrameStanding(
            table.LengthOrDefault(TrustWithinKeys.Athwart, units),
            table.LengthOrDefault(TrustWithinKeys.Up, units),
            table.LengthOrDefault(TrustWithinKeys.Along, units),
            table.NumberOrDefault(TrustWithinKeys.Heel)
        );
        table.Close();
        return standing;
    }

    private static LineBends Bends(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return LineBends.Default;
        }

        var bends = new LineBends(
            table.LengthOrDefault(TrustWithinKeys.Chine, units),
            table.LengthOrDefault(TrustWithinKeys.Keel, units),
            table.LengthOrDefault(TrustWithinKeys.KeelUp, units),
            table.NumberOrDefault(TrustWithinKeys.Over)
        );
        table.Close();
        return bends;
    }
}
