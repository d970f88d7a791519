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
        if (table is null)
        {
            return StructureSpec.Default.Coupon;
        }

        CouponSpec coupon = new()
        {
            WidthMm = table.LengthOrDefault(StructureKeys.Width, units),
            SpanMm = table.LengthOrDefault(StructureKeys.Rests, units),
            Newtons = table.Quantity(StructureKeys.Load) ?? StructureSpec.Default.Coupon.Newtons,
        };
        table.Close();
        return coupon;
    }
}
