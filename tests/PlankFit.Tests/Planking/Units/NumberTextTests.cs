using PlankFit.Planking.Units;

namespace PlankFit.Tests.Planking.Units;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData(0, "0 planks")]
    [InlineData(1, "1 plank")]
    [InlineData(2, "2 planks")]
    [InlineData(1200, "1200 planks")]
    public void WhatIsCountedIsOneOrMany(int number, string told) =>
        Assert.Equal(told, NumberText.Count(number, "plank"));
}
