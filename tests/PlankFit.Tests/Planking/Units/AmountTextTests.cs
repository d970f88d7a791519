using PlankFit.Planking.Units;

namespace PlankFit.Tests.Planking.Units;

/// <summary>Masses, volumes and rates as written, in both kinds of units.</summary>
public sealed class AmountTextTests
{
    /// <summary>A US gallon is 231 cubic inches and 128 fluid ounces, a pound 16 ounces, a square yard 1296 square inches.</summary>
    [Fact]
    public void UnitsAreWorthWhatTheyAreDefinedToBe()
    {
        Assert.Equal(231 * 16.387064 / 128, AmountText.MillilitresPerUsOunce, 1e-12);
        Assert.Equal(
            453.59237 / 16 / (1296 * 0.0254 * 0.0254),
            AmountText.GsmPerOunceOnYard,
            1e-10
        );
    }

    [Theory]
    [InlineData(231.3, "231 g", "8.16 oz (231 g)")]
    [InlineData(20, "20.0 g", "0.71 oz (20.0 g)")]
    [InlineData(453.59237, "454 g", "16.0 oz (454 g)")]
    public void OnePotsMass(double grams, string metric, string feet)
    {
        Assert.Equal(metric, AmountText.Grams(grams, LengthUnit.Centimetre));
        Assert.Equal(feet, AmountText.Grams(grams, LengthUnit.FeetInchesEighths));
    }

    [Theory]
    [InlineData(0.2, "200 ml", "6.8 US fl oz (200 ml)")]
    [InlineData(0.0076, "7.6 ml", "0.26 US fl oz (7.6 ml)")]
    public void OnePotsVolume(double litres, string metric, string feet)
    {
        Assert.Equal(metric, AmountText.Millilitres(litres, LengthUnit.Metre));
        Assert.Equal(feet, AmountText.Millilitres(litres, LengthUnit.Inch));
    }

    [Fact]
    public void WhatIsBoughtAndRates()
    {
        Assert.Equal("12.47 kg", AmountText.Kg(12.469, LengthUnit.Millimetre));
        Assert.Equal("1.00 lb", AmountText.Kg(0.45359237, LengthUnit.Foot));
        Assert.Equal("1.01 lb", AmountText.KgUp(0.4536, LengthUnit.Foot));
        Assert.Equal("1.00 kg", AmountText.KgUp(1.0000000001, LengthUnit.Metre));
        Assert.Equal("4.00 US qt", AmountText.Litres(3.785411784, LengthUnit.Foot));
        Assert.Equal("600 g/m²", AmountText.Gsm(600, LengthUnit.Millimetre));
        Assert.Equal("17.7 oz/sq yd", AmountText.Gsm(600, LengthUnit.Foot));
        Assert.Equal("8.35 lb a US gallon", AmountText.Density(1, LengthUnit.Foot));
        Assert.Equal("1.09 kg a litre", AmountText.Density(1.09, LengthUnit.Millimetre));
    }

    /// <summary>By chance: no amount that is there is called nought, and what is told as a number is that number to half of its last digit.</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    public void WhatIsThereIsNotCalledNought(int seed)
    {
        var chance = new Random(seed);
        for (int i = 0; i < 500; i++)
        {
            double amount = Math.Pow(10, (chance.NextDouble() * 6) - 4);
            foreach (LengthUnit unit in new[] { LengthUnit.Millimetre, LengthUnit.Foot })
            {
                bool metric = LengthUnits.IsMetric(unit);
                Told(AmountText.Kg(amount, unit), amount / (metric ? 1 : 0.45359237));
                Told(AmountText.Litres(amount, unit), amount / (metric ? 1 : 0.946352946));
            }
        }

        Assert.Equal("0.00 kg", AmountText.Kg(0, LengthUnit.Millimetre));

        static void Told(string told, double real)
        {
            if (told.StartsWith("under ", StringComparison.Ordinal))
            {
                Assert.StartsWith("under 0.01 ", told, StringComparison.Ordinal);
                Assert.InRange(real, 0, 0.005);
                return;
            }

            double read = double.Parse(
                told.Split(' ')[0],
                System.Globalization.CultureInfo.InvariantCulture
            );
            Assert.NotEqual(0, read);
            Assert.Equal(real, read, 0.00501);
        }
    }

    /// <summary>What must be left, and what may be taken off: 3/8" less 0.5 mm is 22.74/64, and 3/8" less the 1/64" that is told is 23/64".</summary>
    [Fact]
    public void WhatMustBeLeftIsNeverLessThanWasMeant()
    {
        Assert.Equal("23/64\"", LengthText.AtLeast((25.4 * 3 / 8) - 0.5, LengthUnit.Foot));
        Assert.Equal("3/8\"", LengthText.AtLeast(25.4 * 3 / 8, LengthUnit.Inch));
        Assert.Equal("1 1/64\"", LengthText.AtLeast(25.5, LengthUnit.FeetInchesEighths));
        Assert.Equal("8.5 mm", LengthText.AtLeast(8.1, LengthUnit.Millimetre));
        for (double mm = 0.3; mm < 30; mm += 0.07)
        {
            string text = LengthText.AtLeast(mm, LengthUnit.Inch).TrimEnd('"');
            double told = text.Split(' ')
                .Sum(t =>
                    t.Split('/') is [var over, var under]
                        ? double.Parse(over, System.Globalization.CultureInfo.InvariantCulture)
                            / double.Parse(under, System.Globalization.CultureInfo.InvariantCulture)
                        : double.Parse(t, System.Globalization.CultureInfo.InvariantCulture)
                );
            Assert.InRange(told * 25.4, mm - 1e-6, mm + (25.4 / 64));
        }
    }

    /// <summary>A bound as written is never more than was meant, and no less than half of it from 1/64" on.</summary>
    [Fact]
    public void ABoundIsNeverMoreThanWasMeant()
    {
        Assert.Equal("0.5 mm", LengthText.AtMost(0.5, LengthUnit.Millimetre));
        Assert.Equal("0.7 mm", LengthText.AtMost(25.4 / 32, LengthUnit.Millimetre));
        Assert.Equal("0.07 cm", LengthText.AtMost(25.4 / 32, LengthUnit.Centimetre));
        Assert.Equal("1/64\"", LengthText.AtMost(0.5, LengthUnit.Foot));
        Assert.Equal("1/32\"", LengthText.AtMost(25.4 / 32, LengthUnit.Inch));
        Assert.Equal("1/32\"", LengthText.AtMost(1, LengthUnit.Foot));
        Assert.Equal("3/64\"", LengthText.AtMost(1.5, LengthUnit.Foot));
        for (double mm = 0.4; mm < 60; mm += 0.1)
        {
            string text = LengthText.AtMost(mm, LengthUnit.Inch).TrimEnd('"');
            double inches = text.Split(' ')
                .Sum(part =>
                    part.Split('/') is [var over, var under]
                        ? (double)int.Parse(over) / int.Parse(under)
                        : int.Parse(part)
                );
            Assert.InRange(25.4 * inches, 0.5 * mm, mm + 0.001);
        }
    }

    /// <summary>By hand: 60 g to a kg are 60/1000 of 16 oz to a lb, 0.96.</summary>
    [Fact]
    public void GramsToAKgAreSixteenThousandthsInOuncesToAPound()
    {
        Assert.Equal(0.96, 60 / AmountText.GramsPerKgPer(LengthUnit.Foot), 1e-12);
        Assert.Equal(60, 60 / AmountText.GramsPerKgPer(LengthUnit.Centimetre), 1e-12);
        Assert.Equal("oz of silica to a lb", AmountText.GramsPerKgUnit("silica", LengthUnit.Inch));
    }

    /// <summary>85 mm are 3.35 inches, 95 are 3.74.</summary>
    [Theory]
    [InlineData(85, RoundTo.Up, "4\"")]
    [InlineData(85, RoundTo.Nearest, "3\"")]
    [InlineData(95, RoundTo.Nearest, "4\"")]
    [InlineData(95, RoundTo.Down, "3\"")]
    [InlineData(25.4 * 85, RoundTo.Up, "7'-1\"")]
    public void WholeInchesGoTheWayThatIsAsked(double mm, RoundTo mode, string told) =>
        Assert.Equal(told, LengthText.WholeInches(mm, LengthUnit.Foot, mode));

    /// <summary>What is there and under half a 32nd is not called nought.</summary>
    [Theory]
    [InlineData(0.3, LengthUnit.Foot, "under 1/32\"")]
    [InlineData(-0.3, LengthUnit.Inch, "under 1/32\"")]
    [InlineData(0, LengthUnit.Foot, "0\"")]
    [InlineData(0.5, LengthUnit.Foot, "1/32\"")]
    [InlineData(0.34, LengthUnit.Millimetre, "0.3 mm")]
    [InlineData(0.02, LengthUnit.Millimetre, "under 0.1 mm")]
    public void WhatIsFinerThanARuleIsToldAsThat(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.Fine(mm, unit));
}
