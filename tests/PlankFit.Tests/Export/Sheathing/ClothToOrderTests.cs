using PlankFit.Export.Sheathing;
using PlankFit.Export.Structure;
using PlankFit.Export.Tables;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheathing;

/// <summary>What comes off a roll is ordered up to a whole 10 mm or inch, never down, the same in the list, the total and the bill; pieces stay as they are cut.</summary>
public sealed class ClothToOrderTests
{
    [Theory]
    [InlineData(44494.2, LengthUnit.Foot, "146'-0\"")]
    [InlineData(44500.8, LengthUnit.Foot, "146'-0\"")]
    [InlineData(44501, LengthUnit.Foot, "146'-1\"")]
    [InlineData(44501, LengthUnit.Inch, "1753\"")]
    [InlineData(44490.1, LengthUnit.Millimetre, "44500 mm")]
    [InlineData(44490, LengthUnit.Millimetre, "44490 mm")]
    [InlineData(44490.1, LengthUnit.Metre, "44.5 m")]
    public void ALengthOffARollIsToldUpToWhatOneOrders(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.ToOrder(mm, unit));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ListTotalAndBillHaveTheSame(bool metric)
    {
        BottomPlan plan = metric ? GluedLaunch.Plan : GluedLaunch.Imperial;
        LengthUnit unit = plan.Job.Units;
        SheathingPlan sheathing = plan.Sheathing!;
        double step = metric ? 10 : 25.4;
        Table order = SheathingTables.Order(plan, sheathing);
        RollPlan roll = Assert.Single(sheathing.Rolls);
        Assert.Equal(
            roll.Rolls.Select(r => LengthText.ToOrder(r.UsedMm, unit)),
            order.Rows.Select(r => r[5].Text)
        );
        double ordered = roll.ToOrderMm(unit);
        Assert.InRange(ordered - roll.LengthMm, 0, roll.Rolls.Length * step);
        Assert.Equal(0, Math.IEEERemainder(ordered, step), 6);
        BillRow bill = Assert.Single(
            plan.Structure!.Bill,
            r => r.Kind.StartsWith("cloth off", StringComparison.Ordinal)
        );
        Assert.Equal(ordered / 1000, bill.Amount, 9);
        // On paper in the very words of the list.
        Assert.Equal(LengthText.ToOrder(ordered, unit), StructureWords.Shown(bill, unit));
    }

    /// <summary>Each amount in the unit that stands beside it, and as the sheet has it in the job's.</summary>
    [Fact]
    public void TheBillSaysItsUnits()
    {
        BottomPlan plan = GluedLaunch.Imperial;
        Table bill = StructureTables.Bill(plan, plan.Structure!);
        Assert.Equal(
            ["amount in the unit beside it", "unit", "as the sheet has it"],
            bill.Columns.Skip(3).Take(3).Select(c => c.Name)
        );
        Assert.Contains(bill.Rows, r => r[4].Text == "m³" && r[5].Text!.EndsWith(" cu ft"));
        Assert.Contains(bill.Rows, r => r[4].Text == "kg" && r[5].Text!.EndsWith(" lb"));
        Assert.DoesNotContain(bill.Rows, r => r[5].Text!.EndsWith(" m"));
    }
}
