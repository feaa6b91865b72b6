"""What tools/build_food_data.py builds the bundled food data with."""
