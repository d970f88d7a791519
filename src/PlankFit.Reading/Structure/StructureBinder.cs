using PlankFit.Planking.Structure;
using PlankFit.Planking.Units;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Structure;

/// <summary>[structure].</summary>
internal static class StructureBinder
{
    public static StructureSpec? Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        StructureSpec usual = StructureSpec.Default;
        StructureSpec spec = new()
        {
            PressureMPa = table.Quantity(StructureKeys.Pressure) / 1000,
            SpanMm = table.Length(StructureKeys.Span, units),
            Coupon = CouponOf(table.Table(StructureKeys.Coupon), units),
            Wood = new()
            {
                Across = table.NumberOrDefault(StructureKeys.Across),
                Shear = table.NumberOrDefault(StructureKeys.Shear),
                Poisson = table.NumberOrDefault(StructureKeys.Poisson),
            },
            Fibres = new()
            {
                FibreMPa = table.Quantity(StructureKeys.Glass) ?? usual.Fibres.FibreMPa,
                ResinMPa = table.Quantity(StructureKeys.Resin) ?? usual.Fibres.ResinMPa,
            },
        };
        table.Close();
        return spec;
    }

    private static CouponSpec CouponOf(TableReader? table, LengthUnit units)
    {
        CouponSpec usual = LengthUnits.IsMetric(units)
            ? StructureSpec.Default.Coupon
            : StructureKeys.InInches;
        if (table is null)
        {
            return usual;
        }

        CouponSpec coupon = new()
        {
            WidthMm = table.Length(StructureKeys.Width, units) ?? usual.WidthMm,
            SpanMm = table.Length(StructureKeys.Rests, units) ?? usual.SpanMm,
            Newtons = table.Quantity(StructureKeys.Load) ?? usual.Newtons,
        };
        table.Close();
        return coupon;
    }
}
