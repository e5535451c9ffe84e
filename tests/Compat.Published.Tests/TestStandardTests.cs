namespace Compat.Published.Tests;

/// <summary>What the shipped table says of published tests, held to the titles and scopes that the standards bodies print.</summary>
public sealed class TestStandardTests
{
    /// <summary>Field, phase and step, and 'with' or 'without mechanical action', as the title of each edition says it.</summary>
    [Theory]
    [InlineData("EN 13727", TestField.Medical, TestStep.Suspension, false)]          // EN 13727:2012, title and scope
    [InlineData("EN 13624", TestField.Medical, TestStep.Suspension, false)]          // EN 13624:2022, title and scope
    [InlineData("EN 14348", TestField.Medical, TestStep.Suspension, false)]          // EN 14348:2005, title and scope
    [InlineData("EN 14476", TestField.Medical, TestStep.Suspension, false)]          // EN 14476:2013+A2:2019, title and scope
    [InlineData("EN 17126", TestField.Medical, TestStep.Suspension, false)]          // EN 17126:2018, title and scope
    [InlineData("EN 16615", TestField.Medical, TestStep.Practical, true)]            // EN 16615:2015, title: 4-field test
    [InlineData("EN 17846", TestField.Medical, TestStep.Practical, true)]            // EN 17846:2023, title: 4-field test
    [InlineData("EN 17387", TestField.Medical, TestStep.Practical, false)]           // EN 17387:2021, title: without mechanical action
    [InlineData("EN 16777", TestField.Medical, TestStep.Practical, false)]           // EN 16777:2018, title: without mechanical action
    [InlineData("EN 14561", TestField.Medical, TestStep.Practical, false)]           // EN 14561:2006, title: carrier test for instruments
    [InlineData("EN 17111", TestField.Medical, TestStep.Practical, false)]           // EN 17111:2018, title: carrier test for instruments
    [InlineData("EN 1276", TestField.FoodAndHousehold, TestStep.Suspension, false)]  // EN 1276:2019, title: food, industrial, domestic and institutional areas
    [InlineData("EN 13697", TestField.FoodAndHousehold, TestStep.Practical, false)]  // EN 13697:2023, title
    [InlineData("EN 1656", TestField.Veterinary, TestStep.Suspension, false)]        // EN 1656:2019, title: veterinary area
    [InlineData("EN 1040", TestField.Development, TestStep.Basic,
        false)]            // EN 1040:2005, scope, note 1: does not evaluate a product for an intended use
    public void ATest_IsOfTheFieldAndStepThatItsTitleSays(string code, TestField field, TestStep step, bool wiping)
    {
        var test = Of(code);
        Assert.Equal((field, step, wiping), (test.Field, test.Step, test.Wiping));
    }

    /// <summary>
    /// EN 17387:2021, scope, excludes mycobacteria and spores; EN 13727:2012, scope, note 3, does so too; EN 17846:2023 is of one organism; EN 16615:2015 is of
    /// yeasts, not of moulds.
    /// </summary>
    [Theory]
    [InlineData("EN 17387", OrganismGroup.Tuberculosis)]
    [InlineData("EN 17387", OrganismGroup.Spores)]
    [InlineData("EN 13727", OrganismGroup.Tuberculosis)]
    [InlineData("EN 13727", OrganismGroup.Spores)]
    [InlineData("EN 17846", OrganismGroup.Spores)]
    [InlineData("EN 16615", OrganismGroup.Fungi)]
    public void ATest_DoesNotShowWhatItsScopeLeavesOut(string code, OrganismGroup group) => Assert.DoesNotContain(OrganismTarget.Of(group), Of(code).Shows);

    /// <summary>EN 14885:2022 names the tests of the medical area; a table without one of them would refuse labels that rest on it.</summary>
    [Fact]
    public void TheTable_HoldsTheTestsOfTheMedicalArea()
    {
        string[] named = ["EN 13727", "EN 13624", "EN 14348", "EN 14476", "EN 17126", "EN 16615", "EN 17387", "EN 17846", "EN 16777", "EN 14561", "EN 14562",
            "EN 14563", "EN 17111", "EN 1499", "EN 1500", "EN 12791"];
        Assert.Empty(named.Except(KnowledgeBase.Shipped.Data.TestStandards.Where(test => test.Field == TestField.Medical).Select(test => test.Code.Value)));
    }

    private static TestStandard Of(string code) => KnowledgeBase.Shipped.Data.TestStandards.Single(test => test.Code.Value == code);
}
