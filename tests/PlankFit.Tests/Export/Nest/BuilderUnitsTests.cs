using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Nest;

/// <summary>What a plan of cutting says in words is in the job's units, and adds up as it is written.</summary>
public sealed class BuilderUnitsTests
{
    [Theory]
    [InlineData(9, LengthUnit.Millimetre, "9 mm")]
    [InlineData(9.525, LengthUnit.FeetInchesEighths, "3/8\"")]
    [InlineData(9.525, LengthUnit.Foot, "3/8\"")]
    [InlineData(9, LengthUnit.Inch, "11/32\"")]
    [InlineData(9.5, LengthUnit.Centimetre, "0.95 cm")]
    [InlineData(9.5, LengthUnit.Metre, "0.0095 m")]
    public void AThicknessIsToldInTheJobsUnits(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.FormatExact(mm, unit));

    [Fact]
    public void AMaterialIsNamedInTheJobsUnits()
    {
        NestPlan nest = NestedPlans.Skiff.Nest!;
        Assert.Equal(LengthUnit.FeetInchesEighths, NestedPlans.Skiff.Job.WrittenIn);
        Assert.All(
            nest.Materials,
            m =>
            {
                Assert.DoesNotContain("mm", m.Name, StringComparison.Ordinal);
                Assert.Contains("\"", m.Name, StringComparison.Ordinal);
            }
        );
    }

    /// <summary>By hand: 0.3 and 0.3 and 0.4 hundredths make one, and the greatest of them has it.</summary>
    [Fact]
    public void PartsOfAnAreaAddUpAsTheyAreWritten()
    {
        Assert.Equal(
            ["1 m²", "2 m²", "3.01 m²"],
            BoardCutWords.AreasOf(6.01e6, [1.003e6, 2.003e6, 3.004e6], LengthUnit.Millimetre)
        );
        var chance = new Random(5);
        for (int i = 0; i < 500; i++)
        {
            LengthUnit unit = i % 2 == 0 ? LengthUnit.Centimetre : LengthUnit.FeetInchesEighths;
            double[] parts = [.. Enumerable.Range(0, 3).Select(_ => 2e7 * chance.NextDouble())];
            ImmutableArray<string> told = BoardCutWords.AreasOf(parts.Sum(), [.. parts], unit);
            Assert.Equal(Number(BoardCutWords.Area(parts.Sum(), unit)), told.Sum(Number));
            double step = unit == LengthUnit.Centimetre ? 1e4 : 9290.304;
            Assert.All(
                told.Zip(parts),
                p =>
                    Assert.InRange(
                        (double)Number(p.First) * (unit == LengthUnit.Centimetre ? 1e6 : 92903.04),
                        p.Second - step,
                        p.Second + step
                    )
            );
        }
    }

    private static decimal Number(string area) =>
        decimal.Parse(area.Split(' ')[0], CultureInfo.InvariantCulture);
}
